"""A figure as it stands in a cell: its text, its plus-minus, where it comes from, and a number to sort by."""

from dataclasses import dataclass

from spindlewise.answer.standing import Standing
from spindlewise.units import figure_text, number_text


@dataclass(frozen=True, slots=True)
class Shown:
    """`key` is the number by which a column sorts, None where there is none; `origin` is the grade."""

    text: str
    spread: str
    origin: str
    source: str
    note: str = ""
    key: float | None = None

    @property
    def is_known(self) -> bool:
        """Whether the text is a figure, and not one of the words for having none."""
        return self.origin not in ("unknown", "none", "not applicable")


def shown(standing: Standing) -> Shown:
    """A standing as a cell."""
    source = ", ".join(part for part in (standing.source, _day(standing)) if part)
    if standing.value is None:
        return Shown(standing.origin, "", standing.origin, standing.source, standing.note)
    if isinstance(standing.value, str):
        return Shown(standing.value, "", standing.origin, source, standing.note)
    return Shown(
        figure_text(standing.value, standing.unit),
        spread_text(standing),
        standing.origin,
        source,
        standing.note,
        standing.value,
    )


def _day(standing: Standing) -> str:
    stated = standing.date.isoformat() if standing.date else ""
    return "" if stated in standing.source else stated


def spread_text(standing: Standing) -> str:
    """The interval of a figure: '± 2 g' where it is even, else 'from 3.1 to 4.2 %'; or nothing."""
    if standing.low is None or standing.high is None or not isinstance(standing.value, float):
        return ""
    down, up = standing.value - standing.low, standing.high - standing.value
    if abs(down - up) < 1e-9:
        return plus_minus_text(up, standing.unit) if up else ""
    low = figure_text(standing.low, standing.unit).removesuffix(f" {standing.unit}")
    return f"from {low} to {figure_text(standing.high, standing.unit)}"


def plus_minus_text(value: float, unit: str) -> str:
    """A plus-minus with the decimals it needs to be seen: '± 0.3 mm'.

    >>> plus_minus_text(1.0, "g"), plus_minus_text(0.5, "g"), plus_minus_text(0.3, "mm")
    ('± 1 g', '± 0.5 g', '± 0.3 mm')
    """
    decimals = 0 if float(value).is_integer() and unit not in ("mm", "%") else 1
    return f"± {number_text(value, decimals)} {unit}".strip()


def signed_text(value: float, unit: str) -> str:
    """A difference with its sign and unit, a real minus for the eye: '−1.0 mm'."""
    decimals = 0 if unit in ("g", "h", "kg") and float(value).is_integer() else 1
    text = number_text(value, decimals, signed=True).replace("-", "−")
    return f"{text} {unit}".strip()
