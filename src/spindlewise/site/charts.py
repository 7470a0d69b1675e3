"""Price against score as a picture: the undominated joined and numbered, intervals as bars."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture

WIDTH, HEIGHT = 780, 360


@dataclass(frozen=True, slots=True)
class Point:
    """One product of the chart: its price in the region's currency, and its score with its interval."""

    name: str
    price: float
    price_text: str
    low: float
    expected: float
    high: float
    held_back: bool


@dataclass(frozen=True, slots=True)
class PriceAgainstScore:
    """What the chart shows, whatever the order of its points."""

    points: tuple[Point, ...]
    currency: str


def front(points: Sequence[Point]) -> tuple[Point, ...]:
    """Who is undominated, in order of price: nobody else costs no more and is expected to score as well.

    Of two at one price and score the first by name stands. What a safety notice holds back takes no part.
    """
    found: list[Point] = []
    for point in sorted(points, key=lambda p: (p.price, -p.expected, p.name)):
        if not point.held_back and (not found or point.expected > found[-1].expected):
            found.append(point)
    return tuple(found)


def price_score_picture(points: Sequence[Point], currency: str) -> Picture | None:
    """The picture; none for no points.

    The score axis is fixed at 0 to 100. The stepped line joins the undominated, which are numbered in the
    order of `front`: names would overlap. Same points in any order, same picture.
    """
    if not points:
        return None
    shown = PriceAgainstScore(tuple(sorted(points, key=lambda p: (p.price, p.name))), currency)
    return Picture("price-score", "Price against score", described(points), price_score, shown)


def described(points: Sequence[Point]) -> str:
    """The chart in a sentence, for those who do not see it."""
    named = "; ".join(f"{p.name} at {p.price_text} scores {p.expected:.1f}" for p in front(points))
    held = [p.name for p in points if p.held_back]
    also = f" Held back by a safety notice: {', '.join(held)}." if held else ""
    return f"Price against score of {len(points)} pedals. Undominated, from the cheapest on: {named}.{also}"


def price_score(shown: PriceAgainstScore) -> dict[str, Any]:
    """The chart's specification."""
    points = shown.points
    leading = {point.name: str(place) for place, point in enumerate(front(points), 1)}
    prices = [point.price for point in points]
    span = max(prices) - min(prices) or max(prices) or 1.0
    words = {
        "@rows": [_row(p, leading.get(p.name, "")) for p in points],
        "@domain": [max(0.0, min(prices) - 0.08 * span), max(prices) + 0.18 * span],
        "@title": f"Price, {shown.currency}",
    }
    found: dict[str, Any] = filled(_template(), words)
    return found


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    base = alt.Chart(alt.InlineData(values="@rows"))
    x = alt.X(
        "price:Q", title="@title", scale=alt.Scale(domain=["@domain"], nice=False), axis=alt.Axis(tickCount=6)
    )
    y = alt.Y("expected:Q", title="Score", scale=alt.Scale(domain=[0, 100]), axis=alt.Axis(tickCount=6))
    named = alt.Description("said:N")
    led, others, held = (f"datum.kind == '{kind}'" for kind in ("leading", "other", "held"))
    chart = alt.layer(
        base.transform_filter(led)
        .mark_line(interpolate="step-after", color=LIGHT["accent"], strokeWidth=1.5, aria=False)
        .encode(x=x, y=y),
        base.mark_rule(color=LIGHT["span"], strokeWidth=2.5, aria=False).encode(x=x, y="low:Q", y2="high:Q"),
        base.transform_filter(others)
        .mark_point(filled=True, size=55, opacity=1, color=LIGHT["edge"])
        .encode(x=x, y=y, description=named),
        base.transform_filter(led)
        .mark_point(filled=True, size=95, opacity=1, color=LIGHT["accent"])
        .encode(x=x, y=y, description=named),
        base.transform_filter(held)
        .mark_point(shape="cross", filled=True, size=90, opacity=1, color=LIGHT["caution-edge"])
        .encode(x=x, y=y, description=named),
        base.transform_filter(led)
        .mark_text(align="right", dx=-8, dy=-10, fontSize=15, fontWeight=700, color=LIGHT["ink"], aria=False)
        .encode(x=x, y=y, text="number:N"),
    ).properties(width=WIDTH, height=HEIGHT)
    return template(chart)


def _row(point: Point, number: str) -> dict[str, Any]:
    kind = "held" if point.held_back else "leading" if number else "other"
    said = f"{point.name}: {point.price_text}, score {point.expected:.1f}"
    ends = {"low": round(point.low, 3), "expected": round(point.expected, 3), "high": round(point.high, 3)}
    return {"number": number, "price": point.price, "kind": kind, "said": said, **ends}
