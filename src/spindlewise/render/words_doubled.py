"""By how much a doubled side reads wrong, in a sentence or two."""

from spindlewise.reception.doubled_side import DoubledError
from spindlewise.units import percent_text, watts_text

POPULATION = (
    "for 19 riders of 20, since your balance is unknown "
    "(a population's figure, from 23 recreational riders, Osmani 2022; it is not yours)"
)
SIGNS = {"either way": "reads low or high", "reads true": "reads true at an even balance"}


def doubled_words(found: DoubledError, receiver: str) -> str:
    """The error in percent and, where threshold power is stated, in watts; and how it drifts with balance."""
    whose = "at your own balance" if found.basis == "buyer" else POPULATION
    said = f"Doubling one leg {SIGNS.get(found.sign, found.sign)} there: "
    said += _range(percent_text(found.low_pct, signed=True), percent_text(found.high_pct, signed=True))
    said += f" {whose}"
    if found.low_w is not None and found.high_w is not None:
        ends = _range(watts_text(found.low_w, signed=True), watts_text(found.high_w, signed=True))
        said += f", which is {ends} at your threshold power"
    return f"{said} ({receiver}).{_drift(found)}"


def _range(low: str, high: str) -> str:
    return low if low == high else f"{low} to {high}"


def _drift(found: DoubledError) -> str:
    """A change that is the balance's, not the rider's: it looks like form gained or lost."""
    if found.basis != "buyer" or found.low_pct == found.high_pct:
        return ""
    width = percent_text(found.high_pct - found.low_pct)
    if found.low_w is not None and found.high_w is not None:
        width += f" or {watts_text(found.high_w - found.low_w)}"
    return f" A drift of your balance over that range moves the reading by {width} at the same true power."
