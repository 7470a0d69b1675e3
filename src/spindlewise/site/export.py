"""The export: all that a page needs to rank for its reader, as data; what can be worked out here is.

The script that reads it holds no curve, no rule of reception, no table of ingress codes and no rate: it adds
up, compares and rounds. Worked out here are: merits of everything that does not depend on the reader, prices
in force in minor units, reading modes for every kind of receiver, the answer of every ingress code to every
need, what a product alone adds to the uncertainty of its reading. Left to the script are: shares, scores,
order, levels, break-even prices, needs, the doubled side at the reader's balance, ownership, ladder, saddle.
"""

from itertools import product as each_of

from spindlewise.answer.asking import USUAL_POINTS
from spindlewise.answer.desk import Desk
from spindlewise.answer.owning import TYPICAL_HOURS_PER_YEAR, TYPICAL_YEARS
from spindlewise.catalog.figure import KnownCode, ingress
from spindlewise.catalog.ingress_code import meets
from spindlewise.decide.weight_draws import Sureness, concentration
from spindlewise.reception.budget import COVERAGE
from spindlewise.reception.doubled_side import doubled_error
from spindlewise.render.as_json import Json
from spindlewise.site.export_markets import exported_markets
from spindlewise.site.export_products import exported_product
from spindlewise.site.export_reception import ABLE, FREE, HEARD, ReceptionTables, reception_tables

SCHEMA = "spindlewise weigh 1"
"""Goes up by one whenever a key changes its meaning or goes away."""

USUALLY_SURE: Sureness = "fairly"
"""How sure of the weights a reader of the page is taken to be; a buyer who does not say is, too."""

CODES = tuple(
    [f"IP{solid}{water}" for solid, water in each_of("0123456", "0123456789X")]
    + [f"IPX{water}" for water in "0123456789"]
)
"""Every code that a need can name (IEC 60529)."""


def weigh_export(desk: Desk, tables: ReceptionTables | None = None) -> dict[str, Json]:
    """The whole catalog on the desk's day, without anything of any buyer; JSON can hold all of it.

    `tables` are its reading modes, worked out unless given.
    """
    catalog = desk.catalog
    if tables is None:
        tables = reception_tables(catalog, desk.yardstick, desk.day)
    invented = catalog.settings.invented
    points: dict[str, Json] = {str(name): share for name, share in USUAL_POINTS.items()}
    return {
        "schema": SCHEMA,
        "as_of": desk.day.isoformat(),
        "title": catalog.settings.title,
        "invented": "" if invented == "no" else invented,
        "cautions": list(catalog.settings.cautions),
        "criteria": _criteria(desk),
        "usual": {
            "points": points,
            "years": f"{TYPICAL_YEARS:f}",
            "hours_per_year": f"{TYPICAL_HOURS_PER_YEAR:f}",
        },
        "markets": exported_markets(desk),
        "products": [exported_product(desk, p, tables.row_of[p.id]) for p in catalog.products.values()],
        "reception": {
            "heard": [list(heard) for heard in HEARD],
            "free": list(FREE),
            "able": list(ABLE),
            "outcomes": list(tables.outcomes),
            "rows": [list(row) for row in tables.rows],
        },
        "ingress": _ingress(desk),
        "doubled": _doubled(),
        "coverage": COVERAGE,
        "worlds": {"concentration": concentration(USUALLY_SURE)},
    }


def _criteria(desk: Desk) -> list[Json]:
    """In the order in which they are shown; a curve has knots, and the merits of its plausible span."""
    yardstick = desk.yardstick
    found: list[Json] = []
    for name, title in yardstick.titles.items():
        entry: dict[str, Json] = {"name": name, "title": title, "unit": yardstick.units[name]}
        curve = yardstick.curves.get(name)
        if curve is not None:
            entry |= {
                "x": list(curve.x),
                "merit": list(curve.merit),
                "plausible_merits": list(curve.over(*yardstick.spans[name])),
            }
        found.append(entry)
    return found


def _ingress(desk: Desk) -> dict[str, Json]:
    """For each code of a product, a letter for each need: y meets it, n does not, u does not say."""
    codes = {
        found.value
        for found in (ingress(p, desk.day) for p in desk.catalog.products.values())
        if isinstance(found, KnownCode)
    }
    letters = {True: "y", False: "n", None: "u"}
    answers: dict[str, Json] = {
        code: "".join(letters[meets(code, least)] for least in CODES) for code in sorted(codes)
    }
    return {"needs": list(CODES), "answers": answers}


def _doubled() -> dict[str, Json]:
    """The error of a doubled side for a reader who does not know their balance: the population's."""
    error = doubled_error(None)
    return {
        "low": error.low_pct,
        "expected": error.expected_pct,
        "high": error.high_pct,
        "standard": error.standard_pct,
    }
