"""The ranking as a sheet for spreadsheets: a row a product, units in the head, a status by each figure."""

from decimal import Decimal

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.paid import Paid
from spindlewise.answer.ranking import Placed, Ranking
from spindlewise.answer.standing import Standing
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.break_even import Outcome
from spindlewise.render.as_csv import as_csv
from spindlewise.render.naming import naming
from spindlewise.units import amount_text, number_text, points_text


def rank_sheet(catalog: Catalog, ranking: Ranking, even: BreakEvens) -> str:
    """The places first, in order, then all that are out with the reason, as CSV text.

    Where there is no figure the cell is empty, and its status says unknown, none or not applicable.
    """
    names, money = naming(catalog), ranking.buyer.currency
    shown = [name for name in ranking.table.criteria if name != "price"]
    header = ["place", "product", "name", "score", "score_low", "score_high", "level_with"]
    header += [f"price_{money}", f"draws_level_at_{money}"]
    units = {name: ranking.placed[0].standings[name].unit if ranking.placed else "" for name in shown}
    for name in shown:
        header += [_head(name, units[name]), f"{name}_status"]
    header.append("out_because")
    rows = []
    for placed in ranking.placed:
        row = _place(placed, names.product(placed.product), even)
        for name in shown:
            row += list(_cells(placed.standings[name]))
        rows.append([*row, ""])
    blank = [""] * (2 * len(shown))
    for out in ranking.excluded:
        price = amount_text(out.paid.amount, out.paid.currency) if isinstance(out.paid, Paid) else ""
        because = "; ".join(failure.because for failure in out.because)
        rows.append(["", out.product, names.product(out.product), "", "", "", "", price, "", *blank, because])
    day = ranking.day.isoformat()
    return as_csv(["as_of", *header], [[day, *row] for row in rows])


def _place(placed: Placed, name: str, even: BreakEvens) -> list[str]:
    found, money = even.against_leader.get(placed.product), placed.paid.currency
    level = ""
    if found is not None:
        at_price = found.outcome is Outcome.AT_PRICE and found.amount is not None
        level = amount_text(found.amount or Decimal(0), money) if at_price else found.outcome.value
    return [
        "held back" if placed.held_back else str(placed.rank),
        placed.product,
        name,
        points_text(placed.score.expected),
        points_text(placed.score.low),
        points_text(placed.score.high),
        " ".join(placed.level_with),
        amount_text(placed.paid.amount, money),
        level,
    ]


def _head(name: str, unit: str) -> str:
    unit = {"%": "pct"}.get(unit, unit)
    return f"{name}_{unit}" if unit else name


def _cells(standing: Standing) -> tuple[str, str]:
    value = standing.value
    if value is None:
        return "", standing.origin
    if isinstance(value, str):
        return value, standing.origin
    if standing.criterion == "ownership":
        return amount_text(Decimal(repr(value)), standing.unit), standing.origin
    return number_text(value, 1), standing.origin
