"""Difference against mean of two meters as a picture, with mean difference and limits of agreement."""

import math
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate
from spindlewise.bench.limits import Limits
from spindlewise.bench.proportional_bias import ProportionalBias
from spindlewise.site.chart_style import TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.units import number_text

FloatArray = npt.NDArray[np.float64]

WIDTH, HEIGHT = 640, 300
ACROSS, UP = 64, 36
"""About so many cells, each drawn as one disc: five hours take no more room than ten minutes."""
WIDEST_SD = 3.5
"""What lies further from the mean difference is drawn at the edge, and counted."""
LABEL_PX = 16


@dataclass(frozen=True, slots=True)
class Cell:
    """Seconds of about one mean and one difference, in watts; `beyond`: they lie outside the picture."""

    mean_w: float
    difference_w: float
    count: int
    beyond: bool


@dataclass(frozen=True, slots=True)
class LimitsShown:
    """What the picture shows, in watts. `mean`, `lower` and `upper` are value, low and high of each.

    `slope` are two points of the line on which the difference changes with power, or none.
    """

    first: str
    second: str
    cells: tuple[Cell, ...]
    mean: tuple[float, float, float]
    lower: tuple[float, float, float]
    upper: tuple[float, float, float]
    power: tuple[float, float]
    differences: tuple[float, float]
    slope: tuple[tuple[float, float], ...] = ()


def limits_shown(
    names: tuple[str, str],
    one: FloatArray,
    two: FloatArray,
    limits: Limits,
    slope: ProportionalBias | None = None,
) -> LimitsShown:
    """Gather seconds, shape (n,) each, NaN = not compared, into the cells of a grid.

    Bland and Altman (1986) plot the difference against the mean of both, since a plot against one of them
    shows a slope where there is none. The `slope` is drawn where the percentage changes with power.
    """
    known = np.isfinite(one) & np.isfinite(two)
    mean, difference = (one[known] + two[known]) / 2.0, one[known] - two[known]
    reach = max(WIDEST_SD * limits.sd, 2.0)
    bottom, top = limits.mean.value - reach, limits.mean.value + reach
    bottom, top = min(bottom, -1.0), max(top, 1.0)
    step_x, step_y = _step(float(np.ptp(mean)) / ACROSS), _step((top - bottom) / UP)
    beyond = (difference < bottom) | (difference > top)
    held = np.clip(difference, bottom, top)
    columns, rows = np.floor(mean / step_x).astype(int), np.round(held / step_y).astype(int)
    keys, counts = np.unique(np.stack([columns, rows, beyond.astype(int)]), axis=1, return_counts=True)
    cells = tuple(
        Cell(
            float((column + 0.5) * step_x), min(max(float(row * step_y), bottom), top), int(count), bool(out)
        )
        for (column, row, out), count in zip(keys.T.tolist(), counts.tolist(), strict=True)
    )
    return LimitsShown(
        first=names[0],
        second=names[1],
        cells=cells,
        mean=_three(limits.mean),
        lower=_three(limits.lower),
        upper=_three(limits.upper),
        power=(math.floor(max(mean.min() - step_x - 2, 0.0)), math.ceil(mean.max() + step_x + 2)),
        differences=(round(bottom - step_y, 2), round(top + step_y, 2)),
        slope=() if slope is None or not slope.percent_changes else _ends(slope),
    )


def _ends(slope: ProportionalBias) -> tuple[tuple[float, float], ...]:
    return (
        (round(slope.at_low, 1), round(slope.difference_at_low, 2)),
        (round(slope.at_high, 1), round(slope.difference_at_high, 2)),
    )


def _three(found: Estimate) -> tuple[float, float, float]:
    return (round(found.value, 3), round(found.low, 3), round(found.high, 3))


def _step(least: float) -> float:
    """The next of 1, 2 and 5 times a power of ten.

    >>> _step(0.7), _step(3.1), _step(0.0)
    (1.0, 5.0, 0.1)
    """
    if least <= 0.1:
        return 0.1
    ten = 10.0 ** math.floor(math.log10(least))
    return float(next(ten * part for part in (1, 2, 5, 10) if ten * part >= least * (1 - 1e-9)))


def limits_chart(shown: LimitsShown) -> dict[str, Any]:
    """The chart's specification."""
    most = max((cell.count for cell in shown.cells), default=1)
    inside = [_dot(cell, most) for cell in shown.cells if not cell.beyond]
    outside = [_dot(cell, most) for cell in shown.cells if cell.beyond]
    lines = [
        (shown.mean, LIGHT["accent"], [1, 0]),
        (shown.upper, LIGHT["caution-edge"], [7, 3]),
        (shown.lower, LIGHT["caution-edge"], [7, 3]),
    ]
    rules = [
        {"y": value, "low": low, "high": high, "ink": ink, "dash": dash}
        for (value, low, high), ink, dash in lines
    ]
    words = {
        "@cells": inside,
        "@beyond": outside,
        "@rules": rules,
        "@slope": [{"x": x, "y": y} for x, y in shown.slope],
        "@labels": _labels(shown),
        "@zero": [{"y": 0}],
        "@power": list(shown.power),
        "@differences": list(shown.differences),
        "@x": f"Mean of {shown.first} and {shown.second}, W",
        "@y": f"{shown.first} less {shown.second}, W",
    }
    found: dict[str, Any] = filled(_template(), words)
    return found


def _dot(cell: Cell, most: int) -> dict[str, Any]:
    return {
        "x": round(cell.mean_w, 1),
        "y": round(cell.difference_w, 2),
        "size": round(6 + 84 * math.sqrt(cell.count / most)),
    }


def _labels(shown: LimitsShown) -> list[dict[str, Any]]:
    """The three lines named at the right edge, moved apart where they would touch."""
    low, high = shown.differences
    pixel = (high - low) / HEIGHT
    named = [("upper limit", shown.upper[0]), ("mean", shown.mean[0]), ("lower limit", shown.lower[0])]
    places = [value for _, value in named]
    places[0] = max(places[0], places[1] + LABEL_PX * pixel)
    places[2] = min(places[2], places[1] - LABEL_PX * pixel)
    return [
        {"y": round(place, 2), "text": f"{word} {number_text(value, 1, True)} W".replace("-", "−")}
        for (word, value), place in zip(named, places, strict=True)
    ]


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    cells, beyond, rules, slope, labels, zero = (
        alt.Chart(alt.InlineData(values=f"@{part}"))
        for part in ("cells", "beyond", "rules", "slope", "labels", "zero")
    )
    x = alt.X(
        "x:Q",
        title="@x",
        scale=alt.Scale(domain=["@power"], nice=False, zero=False),
        axis=alt.Axis(tickCount=7, grid=False),
    )
    y = alt.Y(
        "y:Q",
        title="@y",
        scale=alt.Scale(domain=["@differences"], nice=False, zero=False),
        axis=alt.Axis(tickCount=6),
    )
    ink, size = alt.Color("ink:N", scale=None), alt.Size("size:Q", scale=None)
    chart = alt.layer(
        rules.mark_rect(color=LIGHT["accent-soft"], aria=False).encode(y=alt.Y("low:Q"), y2="high:Q"),
        zero.mark_rule(color=LIGHT["edge"], aria=False).encode(y=y),
        cells.mark_point(filled=True, opacity=0.75, color=LIGHT["span"], aria=False).encode(
            x=x, y=y, size=size
        ),
        beyond.mark_point(
            filled=True, shape="diamond", opacity=1, color=LIGHT["caution-edge"], aria=False
        ).encode(x=x, y=y, size=size),
        rules.mark_rule(strokeWidth=2, aria=False).encode(
            y=y, color=ink, strokeDash=alt.StrokeDash("dash:N", scale=None)
        ),
        slope.mark_line(strokeWidth=3, strokeDash=[14, 4], color=LIGHT["ink"], aria=False).encode(x=x, y=y),
        labels.mark_text(align="left", dx=8, fontSize=TEXT_PX, color=LIGHT["ink"]).encode(
            x=alt.value(WIDTH), y=y, text="text:N"
        ),
    ).properties(width=WIDTH, height=HEIGHT)
    return template(chart)
