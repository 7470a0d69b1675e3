"""How a unit's reading moves with the kilometres as a picture: its sessions, and the line through them."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import filled, template
from spindlewise.site.palette import LIGHT

WIDTH, HEIGHT = 640, 240


@dataclass(frozen=True, slots=True)
class SessionShown:
    """One session: kilometres before it, mean difference and spread in percent, and the whole in words."""

    km: float
    pct: float
    sd_pct: float
    said: str


@dataclass(frozen=True, slots=True)
class DriftShown:
    """What the picture shows; `slope` is the change in percent for each 1,000 km."""

    sessions: tuple[SessionShown, ...]
    slope: float


def drift_chart(shown: DriftShown) -> dict[str, Any]:
    """The chart's specification. The line runs through the middle of all sessions, as least squares do."""
    kms = [each.km for each in shown.sessions]
    pcts = [each.pct for each in shown.sessions]
    middle_km, middle = sum(kms) / len(kms), sum(pcts) / len(pcts)
    first, last = min(kms), max(kms)
    room = 0.05 * ((last - first) or 1.0)
    ends = [0.0, *(s.pct - s.sd_pct for s in shown.sessions), *(s.pct + s.sd_pct for s in shown.sessions)]
    slack = 0.08 * (max(ends) - min(ends) or 1.0)
    words = {
        "@sessions": [
            {"km": s.km, "at": s.pct, "low": s.pct - s.sd_pct, "high": s.pct + s.sd_pct, "said": s.said}
            for s in shown.sessions
        ],
        "@line": [{"km": km, "at": middle + shown.slope * (km - middle_km) / 1000.0} for km in (first, last)],
        "@zero": [{"at": 0}],
        "@km": [round(first - room), round(last + room)],
        "@percent": [round(min(ends) - slack, 2), round(max(ends) + slack, 2)],
    }
    found: dict[str, Any] = filled(_template(), words)
    return found


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    sessions, line, zero = (
        alt.Chart(alt.InlineData(values=f"@{part}")) for part in ("sessions", "line", "zero")
    )
    x = alt.X(
        "km:Q",
        title="Ridden before, km",
        scale=alt.Scale(domain=["@km"], nice=False, zero=False),
        axis=alt.Axis(tickCount=7, grid=False),
    )
    y = alt.Y(
        "at:Q",
        title="Difference from the reference, %",
        scale=alt.Scale(domain=["@percent"], nice=False, zero=False),
        axis=alt.Axis(tickCount=6),
    )
    chart = alt.layer(
        zero.mark_rule(color=LIGHT["edge"], aria=False).encode(y=y),
        line.mark_line(strokeWidth=2, strokeDash=[7, 3], color=LIGHT["caution-edge"], aria=False).encode(
            x=x, y=y
        ),
        sessions.mark_rule(strokeWidth=2, color=LIGHT["span"], aria=False).encode(
            x=x, y="low:Q", y2="high:Q"
        ),
        sessions.mark_point(filled=True, size=80, opacity=1, color=LIGHT["accent"]).encode(
            x=x, y=y, description="said:N"
        ),
    ).properties(width=WIDTH, height=HEIGHT)
    return template(chart)
