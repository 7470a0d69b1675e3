"""The difference of two meters by power band as a picture: each band's mean with its interval, in percent."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.bench.bands import Band
from spindlewise.site.chart_style import filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.units import number_text, percent_text

WIDTH, HEIGHT = 640, 220


@dataclass(frozen=True, slots=True)
class BandShown:
    """One band: its ends in watts, and the mean difference in percent with its interval."""

    low_w: float
    high_w: float
    pct: float
    pct_low: float
    pct_high: float


@dataclass(frozen=True, slots=True)
class BandsShown:
    """What the picture shows. `allowed_pct` is what both tolerances allow together, 0 where not stated."""

    first: str
    second: str
    bands: tuple[BandShown, ...]
    allowed_pct: float


def bands_shown(names: tuple[str, str], bands: Sequence[Band], allowed_pct: float) -> BandsShown:
    """The bands of which anything is claimed."""
    found = []
    for band in bands:
        if band.difference_pct is not None:
            pct = band.difference_pct
            ends = (round(pct.value, 3), round(pct.low, 3), round(pct.high, 3))
            found.append(BandShown(band.low, band.high, *ends))
    return BandsShown(*names, tuple(found), round(allowed_pct, 3))


def said(band: BandShown) -> str:
    """A band in words.

    >>> said(BandShown(150, 200, 1.24, 0.8, 1.7))
    '150 to 200 W: +1.2 %, between +0.8 % and +1.7 %'
    """
    return (
        f"{number_text(band.low_w)} to {number_text(band.high_w)} W: {percent_text(band.pct, signed=True)}, "
        f"between {percent_text(band.pct_low, signed=True)} and {percent_text(band.pct_high, signed=True)}"
    )


def bands_chart(shown: BandsShown) -> dict[str, Any]:
    """The chart's specification."""
    ends = [0.0, *(b.pct_low for b in shown.bands), *(b.pct_high for b in shown.bands)]
    if shown.allowed_pct:
        ends += [-shown.allowed_pct, shown.allowed_pct]
    room = 0.08 * (max(ends) - min(ends) or 1.0)
    reach = shown.allowed_pct
    words = {
        "@bands": [
            {
                "from": b.low_w,
                "to": b.high_w,
                "middle": (b.low_w + b.high_w) / 2,
                "at": b.pct,
                "low": b.pct_low,
                "high": b.pct_high,
                "said": said(b),
            }
            for b in shown.bands
        ],
        "@allowed": [{"low": -reach, "high": reach}] if reach else [],
        "@zero": [{"at": 0}],
        "@power": [shown.bands[0].low_w, shown.bands[-1].high_w],
        "@percent": [round(min(ends) - room, 2), round(max(ends) + room, 2)],
        "@y": f"{shown.first} less {shown.second}, %",
    }
    found: dict[str, Any] = filled(_template(), words)
    return found


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    bands, allowed, zero = (
        alt.Chart(alt.InlineData(values=f"@{part}")) for part in ("bands", "allowed", "zero")
    )
    scale = alt.Scale(domain=["@power"], nice=False, zero=False)
    axis = alt.Axis(tickCount=8, grid=False)
    y = alt.Y(
        "at:Q",
        title="@y",
        scale=alt.Scale(domain=["@percent"], nice=False, zero=False),
        axis=alt.Axis(tickCount=6),
    )
    middle = alt.X("middle:Q", title="Mean of both, W", scale=scale, axis=axis)
    chart = alt.layer(
        allowed.mark_rect(color=LIGHT["accent-soft"], aria=False).encode(y=alt.Y("low:Q"), y2="high:Q"),
        zero.mark_rule(color=LIGHT["edge"], aria=False).encode(y=y),
        bands.mark_rule(strokeWidth=4, color=LIGHT["accent"], aria=False).encode(
            x=alt.X("from:Q", scale=scale), x2="to:Q", y=y
        ),
        bands.mark_rule(strokeWidth=2, color=LIGHT["ink"], aria=False).encode(
            x=middle, y="low:Q", y2="high:Q"
        ),
        bands.mark_point(filled=True, size=70, opacity=1, color=LIGHT["accent"]).encode(
            x=middle, y=y, description="said:N"
        ),
    ).properties(width=WIDTH, height=HEIGHT)
    return template(chart)
