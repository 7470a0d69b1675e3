"""The ranking as a sheet for spreadsheets: a row a product, units in the head, a status by each figure."""

from decimal import Decimal

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.answer.ranking import Excluded, Placed, Ranking
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
    header = ["as_of", "place", "product", "name", "score", "score_low", "score_high", "level_with"]
    header += [f"price_{money}", "price_status", f"draws_level_at_{money}", "draws_level_status"]
    for name in shown:
        units = (standings[name].unit for standings in ranking.standings.values())
        header += [_head(name, next(units, "")), f"{name}_status"]
    header.append("out_because")
    rows = []
    places: tuple[Placed | Excluded, ...] = (*ranking.placed, *ranking.excluded)
    for place in places:
        row = [ranking.day.isoformat(), *_place(place, names.product(place.product))]
        row += [*_price(place.paid), *_level(place.product, even, money)]
        for name in shown:
            row += _cells(ranking.standings[place.product][name])
        because = "" if isinstance(place, Placed) else "; ".join(failure.because for failure in place.because)
        rows.append([*row, because])
    return as_csv(header, rows)


def _place(place: Placed | Excluded, name: str) -> list[str]:
    if isinstance(place, Excluded):
        return ["", place.product, name, "", "", "", ""]
    span = (place.score.expected, place.score.low, place.score.high)
    return [
        "held back" if place.held_back else str(place.rank),
        place.product,
        name,
        *(points_text(points) for points in span),
        " ".join(place.level_with),
    ]


def _price(paid: Paid | Unpriced) -> tuple[str, str]:
    if isinstance(paid, Unpriced):
        return "", "unknown"
    return amount_text(paid.amount, paid.currency), "worked out" if paid.conversion else "observed price"


def _level(product: str, even: BreakEvens, money: str) -> tuple[str, str]:
    found, out = even.against_leader.get(product), even.out.get(product)
    if found is not None:
        amount, status = found.amount, found.outcome.value
    elif out is not None:
        amount, status = out.amount, Outcome.AT_PRICE.value if out.amount is not None else out.because
    else:
        return "", "stands first"
    return ("" if amount is None else amount_text(amount, money)), status


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
