"""How one figure reads: the number in its unit with its grade, or which kind of nothing stands there."""

from decimal import Decimal

from spindlewise.answer.paid import Paid
from spindlewise.answer.standing import Standing
from spindlewise.units import figure_text, money_text

MONEY = frozenset({"price", "ownership"})
OBSERVED = ("measured", "reported", "claimed")
MEASURED_IN = ("g", "mm", "h", "%")
"""Units of figures that are measured: a warranty of 2 years has no plus-minus to state."""
KEY = (
    "Where figures come from. measured: on this catalog's own bench. reported: by somebody else. "
    "claimed: by the maker. "
    "predicted: from the record of similar products. worked out: from several figures; "
    "from claims, where the bench has seen nothing of it. "
    "unknown: nobody has said. none: there is none. not applicable: the question makes no sense here."
)
"""What the grades mean, once a reply."""


def value_words(standing: Standing) -> str:
    """The bare figure in its unit; `unknown`, `none` or `not applicable` where there is none.

    >>> value_words(Standing("weight", 316.0, 315.0, 317.0, "g", "measured", None, "bench"))
    '316 g'
    """
    value = standing.value
    if value is None:
        return standing.origin
    if isinstance(value, str):
        return value
    if standing.criterion in MONEY:
        return money_text(Decimal(repr(value)), standing.unit)
    return figure_text(value, standing.unit)


def graded_words(standing: Standing) -> str:
    """The figure with its grade.

    >>> graded_words(Standing("weight", 316.0, None, None, "g", "claimed", None, "sheet"))
    '316 g, claimed'
    >>> graded_words(Standing("weight", None, None, None, "g", "unknown", None, "nobody says"))
    'unknown'
    """
    if standing.value is None or standing.origin == "observed price":
        return value_words(standing)
    return f"{value_words(standing)}, {standing.origin}"


def full_words(standing: Standing) -> str:
    """The figure with its interval, grade, day, source and basis: all that it can be followed by."""
    if standing.value is None:
        return f"{standing.origin} ({standing.source})" if standing.source else standing.origin
    parts: list[str] = [standing.origin]
    if standing.low is not None and standing.high is not None and standing.low != standing.high:
        low = figure_text(standing.low, standing.unit).removesuffix(standing.unit).rstrip()
        parts.append(f"{low} to {figure_text(standing.high, standing.unit)}")
    elif standing.origin in OBSERVED and standing.unit in MEASURED_IN:
        parts.append("no plus-minus stated")
    if standing.date is not None:
        parts.append(standing.date.isoformat())
    parts += [part for part in (standing.source, standing.note) if part]
    return f"{value_words(standing)} ({'; '.join(parts)})"


def paid_words(paid: Paid, old_after_days: int | None = None) -> str:
    """What is paid, where, and since when that is known; a price seen too long ago is called old."""
    row = paid.row
    where = {
        "list": f"list price of {row.seller}",
        "street": f"street price at {row.seller}",
        "offer": f"offer at {row.seller}",
        "clearance": f"clearance price at {row.seller}",
    }[row.kind]
    parts = [where, f"seen {row.date.isoformat()}"]
    if row.valid_until is not None:
        parts.append(f"last day {row.valid_until.isoformat()}")
    elif old_after_days is not None and paid.age_days > old_after_days:
        parts.append(f"an old price, {paid.age_days} days")
    parts += paid.conversion
    return f"{money_text(paid.amount, paid.currency)} ({', '.join(parts)})"
