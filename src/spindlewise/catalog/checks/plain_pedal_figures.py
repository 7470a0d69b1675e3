"""plain-pedal-figures: a plain pedal has no figures of a meter.

PASS: `tolerance_pct: not applicable` on a plain pedal
FAIL: `running_hours` with a list on a plain pedal
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem

METER_FIGURES = (
    "tolerance_pct",
    "running_hours",
    "reading_bias_pct",
    "reading_spread_pct",
    "temperature_pct",
)


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each list of a meter's figures on a plain pedal."""
    for product in catalog.products.values():
        for attribute in METER_FIGURES if product.kind == "plain pedal" else ():
            if not isinstance(getattr(product.observations, attribute), str):
                told = "a plain pedal measures nothing and has no batteries"
                path = ("observations", attribute)
                yield at_value(catalog, product.id, path, "plain-pedal-figures", told, "write not applicable")
