"""Claimed against weighed as a picture: by how many grams each product strays from its maker's claim."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import NAME_PX, TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture

WIDTH, ROW = 460, 28
MOST = 40
"""More are told in the table only, those that stray least."""


@dataclass(frozen=True, slots=True)
class Strayed:
    """One product: what the scales say less what the maker says, in grams, with its interval.

    `weighed` is False where nobody has weighed it and the figure is what the record leads to expect.
    """

    name: str
    low_g: float
    expected_g: float
    high_g: float
    weighed: bool
    said: str


def claims_picture(strayed: Sequence[Strayed]) -> Picture | None:
    """The picture; none for no products."""
    if not strayed:
        return None
    far = sorted(strayed, key=lambda s: (-abs(s.expected_g), s.name))[:MOST]
    shown = tuple(sorted(far, key=lambda s: (not s.weighed, -s.expected_g, s.name)))
    weighed = [s for s in strayed if s.weighed]
    heavier = sum(s.low_g > 0 for s in weighed)
    lighter = sum(s.high_g < 0 for s in weighed)
    said = (
        f"Weighed less claimed, in grams. Of {len(weighed)} pedals weighed, {heavier} are heavier than "
        f"claimed and {lighter} lighter by more than the plus-minus."
    )
    if weighed:
        most = max(weighed, key=lambda s: (abs(s.expected_g), s.name))
        said += f" Furthest off: {most.said}."
    return Picture("claims", "Weight, claimed against weighed", said, claims_chart, shown)


def claims_chart(shown: tuple[Strayed, ...]) -> dict[str, Any]:
    """The chart's specification."""
    rows = [
        {
            "name": s.name,
            "low": s.low_g,
            "at": s.expected_g,
            "high": s.high_g,
            "kind": "weighed" if s.weighed else "predicted",
            "said": s.said,
        }
        for s in shown
    ]
    ends = [0.0, *(s.low_g for s in shown), *(s.high_g for s in shown)]
    room = 0.06 * (max(ends) - min(ends) or 1.0)
    words = {
        "@rows": rows,
        "@names": [s.name for s in shown],
        "@domain": [min(ends) - room, max(ends) + room],
        "@zero": [{"at": 0}],
    }
    found: dict[str, Any] = filled(_template(), words)
    return found


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    base, zero = (alt.Chart(alt.InlineData(values=f"@{part}")) for part in ("rows", "zero"))
    scale = alt.Scale(domain=["@domain"], nice=False)
    x = alt.X(
        "at:Q",
        scale=scale,
        title="g heavier than claimed (lighter to the left of 0)",
        axis=alt.Axis(tickCount=8, orient="top", titleFontSize=TEXT_PX),
    )
    y = alt.Y(
        "name:N",
        sort=None,
        scale=alt.Scale(domain=["@names"]),
        title=None,
        axis=alt.Axis(
            labelFontSize=NAME_PX,
            labelColor=LIGHT["ink"],
            grid=False,
            domain=False,
            ticks=False,
            labelPadding=10,
        ),
    )
    weighed, predicted = (f"datum.kind == '{kind}'" for kind in ("weighed", "predicted"))
    named = alt.Description("said:N")
    chart = alt.layer(
        zero.mark_rule(color=LIGHT["edge"], strokeWidth=1.5, aria=False).encode(x=x),
        base.mark_rule(color=LIGHT["span"], strokeWidth=3, aria=False).encode(
            x=alt.X("low:Q"), x2="high:Q", y=y
        ),
        base.transform_filter(weighed)
        .mark_point(filled=True, size=90, opacity=1, color=LIGHT["accent"])
        .encode(x=x, y=y, description=named),
        base.transform_filter(predicted)
        .mark_point(
            shape="diamond", size=110, strokeWidth=2, fill=LIGHT["sheet"], stroke=LIGHT["accent"], opacity=1
        )
        .encode(x=x, y=y, description=named),
    ).properties(width=WIDTH, height=alt.Step(ROW))
    return template(chart)
