"""Lines over the time of a ride as a picture: recordings laid over each other, differences, a sprint."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.ride_traces import Trace

WIDTH = 780
INKS = ("accent", "caution-edge", "ink", "edge")
DASHES = ([1, 0], [7, 2], [2, 2], [9, 2, 2, 2])
SHAPES = ("circle", "square", "triangle-up", "diamond")
"""Meters are told apart by colour and by stroke, in the order of the sheet."""

TICKS_S = (1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 900, 1200, 1800, 3600, 7200, 14400, 28800)


@dataclass(frozen=True, slots=True)
class Traces:
    """What the picture shows. `names` are all meters of the ride: each keeps its stroke everywhere."""

    names: tuple[str, ...]
    traces: tuple[Trace, ...]
    start_s: float
    end_s: float
    low: float
    high: float
    title: str
    height: int
    dotted: bool = False
    """Whether each point is marked: for a picture in which every second can be seen."""


def ticks(start_s: float, end_s: float, most: int = 8) -> tuple[float, ...]:
    """Round moments of the ride between two others, at most so many and two at least.

    >>> ticks(0, 2400), ticks(1710, 1745)
    ((0, 600, 1200, 1800, 2400), (1710, 1715, 1720, 1725, 1730, 1735, 1740, 1745))
    """
    span = end_s - start_s
    step = next((each for each in TICKS_S if span / each < most), int(span / most) or 1)
    first = -(-start_s // step) * step
    found = []
    while first <= end_s:
        found.append(int(first))
        first += step
    return tuple(found)


def stroke(names: Sequence[str], name: str) -> tuple[str, list[int], str]:
    """The colour's name, dashes and shape of a meter; the fifth takes the first's colour anew."""
    at = list(names).index(name)
    return (
        INKS[at % len(INKS)],
        DASHES[(at + at // len(INKS)) % len(DASHES)],
        SHAPES[(at + at // len(INKS)) % len(SHAPES)],
    )


def traces_chart(shown: Traces) -> dict[str, Any]:
    """The chart's specification."""
    names = [each.name for each in shown.traces]
    strokes = [stroke(shown.names, name) for name in names]
    rows = [
        {"t": second, "w": watts, "name": each.name, "run": f"{each.name} {number}"}
        for each in shown.traces
        for number, run in enumerate(each.runs)
        for second, watts in run
    ]
    points = [
        {"t": second, "w": watts, "ink": LIGHT[ink], "shape": shape}
        for each, (ink, _, shape) in zip(shown.traces, strokes, strict=True)
        for run in each.runs
        for second, watts in run
    ]
    words = {
        "@rows": rows,
        "@points": points if shown.dotted else [],
        "@zero": [{"w": 0}] if shown.low < 0 < shown.high else [],
        "@names": names,
        "@inks": [LIGHT[ink] for ink, _, _ in strokes],
        "@dashes": [dash for _, dash, _ in strokes],
        "@time": [shown.start_s, shown.end_s],
        "@ticks": list(ticks(shown.start_s, shown.end_s)),
        "@watts": [shown.low, shown.high],
        "@title": shown.title,
    }
    found: dict[str, Any] = {**filled(_template(), words), "height": shown.height}
    return found


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    lines, points, zero = (
        alt.Chart(alt.InlineData(values=f"@{part}")) for part in ("rows", "points", "zero")
    )
    moment = (
        "floor(datum.value / 3600) + ':' + format(floor(datum.value / 60) % 60, '02d') + ':' + "
        "format(datum.value % 60, '02d')"
    )
    x = alt.X(
        "t:Q",
        title="Time of the ride",
        scale=alt.Scale(domain=["@time"], nice=False),
        axis=alt.Axis(values=["@ticks"], labelExpr=moment, grid=False, labelFlush=False),
    )
    y = alt.Y(
        "w:Q",
        title="@title",
        scale=alt.Scale(domain=["@watts"], nice=False, zero=False),
        axis=alt.Axis(tickCount=6),
    )
    legend = alt.Legend(
        orient="top",
        title=None,
        labelFontSize=TEXT_PX,
        labelColor=LIGHT["ink"],
        symbolType="stroke",
        symbolSize=500,
        symbolStrokeWidth=2.5,
        labelLimit=0,
        columnPadding=28,
    )
    ink = alt.Color("name:N", scale=alt.Scale(domain=["@names"], range=["@inks"]), legend=legend)
    dash = alt.StrokeDash("name:N", scale=alt.Scale(domain=["@names"], range=["@dashes"]), legend=legend)
    chart = alt.layer(
        zero.mark_rule(color=LIGHT["edge"], aria=False).encode(y=y),
        lines.mark_line(strokeWidth=1.4, strokeJoin="round", aria=False).encode(
            x=x, y=y, detail="run:N", color=ink, strokeDash=dash
        ),
        points.mark_point(filled=True, size=34, opacity=1, aria=False).encode(
            x=x, y=y, color=alt.Color("ink:N", scale=None), shape=alt.Shape("shape:N", scale=None)
        ),
    ).properties(width=WIDTH)
    return template(chart)
