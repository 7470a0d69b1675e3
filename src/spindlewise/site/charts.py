"""Price against score as a picture: SVG with text as text, in the page's own colours, for light and dark."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from spindlewise.site.palette import LIGHT

if TYPE_CHECKING:
    import altair

WIDTH, HEIGHT = 720, 340
INKS = ("ink", "quiet", "rule", "accent", "span", "edge", "caution-edge")
"""The colours that a chart may use; drawn in the light palette, they become the page's properties."""


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


def front(points: Sequence[Point]) -> tuple[Point, ...]:
    """Who is undominated, in order of price: nobody else costs no more and is expected to score as well.

    Of two at one price and score the first by name stands. What a safety notice holds back takes no part.
    """
    found: list[Point] = []
    for point in sorted(points, key=lambda p: (p.price, -p.expected, p.name)):
        if not point.held_back and (not found or point.expected > found[-1].expected):
            found.append(point)
    return tuple(found)


def price_score_chart(points: Sequence[Point], currency: str) -> str:
    """The chart as an SVG element that can stand in a page; empty for no points.

    The score axis is fixed at 0 to 100; bars are intervals. The stepped line joins the undominated, which are
    numbered in the order of `front`: names would overlap. Same points, same bytes.
    """
    if not points:
        return ""
    import vl_convert

    return _at_home(vl_convert.vegalite_to_svg(_drawn(points, currency).to_dict()), described(points))


def described(points: Sequence[Point]) -> str:
    """The chart in a sentence, for those who do not see it."""
    named = "; ".join(f"{p.name} at {p.price_text} scores {p.expected:.1f}" for p in front(points))
    held = [p.name for p in points if p.held_back]
    also = f" Held back by a safety notice: {', '.join(held)}." if held else ""
    return f"Price against score of {len(points)} pedals. Undominated, from the cheapest on: {named}.{also}"


def _drawn(points: Sequence[Point], currency: str) -> "altair.LayerChart":
    import altair as alt

    leading = {point.name: str(place) for place, point in enumerate(front(points), 1)}
    prices = [point.price for point in points]
    span = max(prices) - min(prices) or max(prices) or 1.0
    rows = [_row(p, leading.get(p.name, "")) for p in sorted(points, key=lambda p: (p.price, p.name))]
    base = alt.Chart(alt.InlineData(values=rows))
    domain = [max(0.0, min(prices) - 0.08 * span), max(prices) + 0.18 * span]
    x = alt.X("price:Q", title=f"Price, {currency}", scale=alt.Scale(domain=domain, nice=False))
    y = alt.Y("expected:Q", title="Score", scale=alt.Scale(domain=[0, 100]))
    named = alt.Description("said:N")
    led, others, held = (f"datum.kind == '{kind}'" for kind in ("leading", "other", "held"))
    chart: altair.LayerChart = (
        alt.layer(
            base.transform_filter(led)
            .mark_line(interpolate="step-after", color=LIGHT["accent"], strokeWidth=1.5, aria=False)
            .encode(x=x, y=y),
            base.mark_rule(color=LIGHT["span"], strokeWidth=2.5, aria=False).encode(
                x=x, y="low:Q", y2="high:Q"
            ),
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
            .mark_text(
                align="right", dx=-8, dy=-10, fontSize=15, fontWeight=700, color=LIGHT["ink"], aria=False
            )
            .encode(x=x, y=y, text="number:N"),
        )
        .properties(width=WIDTH, height=HEIGHT, background="transparent")
        .configure_view(stroke=None)
        .configure_axis(
            labelColor=LIGHT["quiet"],
            titleColor=LIGHT["ink"],
            gridColor=LIGHT["rule"],
            domainColor=LIGHT["edge"],
            tickColor=LIGHT["edge"],
            labelFontSize=13,
            titleFontSize=13,
            tickCount=6,
            labelLimit=0,
        )
    )
    return chart


def _row(point: Point, number: str) -> dict[str, Any]:
    kind = "held" if point.held_back else "leading" if number else "other"
    said = f"{point.name}: {point.price_text}, score {point.expected:.1f}"
    ends = {"low": round(point.low, 3), "expected": round(point.expected, 3), "high": round(point.high, 3)}
    return {"number": number, "price": point.price, "kind": kind, "said": said, **ends}


def _at_home(svg: str, description: str) -> str:
    """The SVG with the page's colours and fonts, a name for the whole, and no size of its own."""
    from markupsafe import escape

    for name in INKS:
        svg = svg.replace(f'"{LIGHT[name]}"', f'"var(--{name})"')
    svg = re.sub(r' font-family="[^"]*"', "", svg)
    box = re.match(r'<svg [^>]*viewBox="([^"]*)"[^>]*>', svg)
    if box is None:
        raise ValueError("the renderer gave no SVG with a viewBox; its version may be too new")
    start = f'<svg class="chart" viewBox="{box[1]}" role="img" aria-label="{escape(description)}">'
    return start + svg[box.end() :]
