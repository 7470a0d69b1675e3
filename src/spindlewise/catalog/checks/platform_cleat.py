"""platform-cleat: a pedal without a cleat has neither pattern nor height, and one with a cleat has a pattern.

PASS: `bolts: none`, `pattern: none`, `height_mm: not applicable`
FAIL: `bolts: none` with `pattern: Keel`
"""

from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem

RULE = "platform-cleat"


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each cleat whose parts contradict one another."""
    for product in catalog.products.values():
        cleat = product.cleat
        if cleat.bolts == "none":
            if cleat.pattern != "none":
                told = "a platform pedal takes no cleat"
                yield at_value(
                    catalog, product.id, ("cleat", "pattern"), RULE, told, "write none, or correct bolts"
                )
            if cleat.height_mm != "not applicable":
                told = "a platform pedal has no cleat to be high"
                tip = "write not applicable, or correct bolts"
                yield at_value(catalog, product.id, ("cleat", "height_mm"), RULE, told, tip)
        elif cleat.bolts != "unknown" and cleat.pattern == "none":
            told = f"a {cleat.bolts} cleat has a pattern"
            yield at_value(
                catalog,
                product.id,
                ("cleat", "pattern"),
                RULE,
                told,
                "write the maker's name for it, or unknown",
            )
