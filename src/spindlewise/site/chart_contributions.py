"""Where each score comes from, as a picture: points earned of the points that the buyer gives."""

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import MOST_ROWS, NAME_PX, ROW_PX, TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture
from spindlewise.units import points_text

LONGEST_BAR_PX = 72
NUMBER_PX = 40
BAR_PX = 14
TITLE_CHARACTERS = 13
LEAST_COLUMN_PX = 126
"""Room for a title, whatever font the reader has."""


@dataclass(frozen=True, slots=True)
class Contributions:
    """Points by product and criterion; a criterion can give `most` of it, together 100.

    Products stand in the order of the ranking; a score is the sum of its row.
    """

    names: tuple[str, ...]
    titles: tuple[str, ...]
    most: tuple[float, ...]
    points: tuple[tuple[float, ...], ...]
    scores: tuple[str, ...]
    more: int
    """So many products stand further down and are not shown."""


def contributions(
    names: Sequence[str],
    titles: Sequence[str],
    shares: Sequence[float],
    merits: Sequence[Sequence[float]],
    scores: Sequence[float],
) -> Contributions:
    """Points from shares of the weight (sum 1) and expected merits (0 to 1), for the first rows."""
    rows = tuple(
        tuple(100 * share * merit for share, merit in zip(shares, row, strict=True))
        for row in merits[:MOST_ROWS]
    )
    return Contributions(
        tuple(names[:MOST_ROWS]),
        tuple(titles),
        tuple(100 * share for share in shares),
        rows,
        tuple(points_text(score) for score in scores[:MOST_ROWS]),
        max(0, len(names) - MOST_ROWS),
    )


def contributions_picture(shown: Contributions) -> Picture | None:
    """The picture; none where there is nothing to show."""
    if not shown.names:
        return None
    given = ", ".join(
        f"{points_text(most)} for {t}" for t, most in zip(shown.titles, shown.most, strict=True)
    )
    said = (
        f"Points that each pedal earns, criterion by criterion. The buyer gives {given}. "
        f"{shown.names[0]} comes to {shown.scores[0]}."
    )
    return Picture("contributions", "Where each score comes from", said, contributions_chart, shown)


def contributions_chart(shown: Contributions) -> dict[str, Any]:
    """The chart's specification: a column for each criterion, all bars on one scale of points."""
    unit = LONGEST_BAR_PX / max(shown.most)
    *starts, end = _starts(shown.most, unit)
    rows = []
    for name, row in zip(shown.names, shown.points, strict=True):
        for title, most, start, earned in zip(shown.titles, shown.most, starts, row, strict=True):
            said = f"{name}, {title}: {points_text(earned)} of {points_text(most)} points"
            full, filled_to = (round(start + points * unit, 2) for points in (most, earned))
            rows.append(
                {
                    "name": name,
                    "start": start,
                    "full": full,
                    "end": filled_to,
                    "text": points_text(earned),
                    "said": said,
                }
            )
    titles = [textwrap.wrap(title, TITLE_CHARACTERS) or [""] for title in shown.titles]
    heads = [{"at": start, "title": title} for title, start in zip(titles, starts, strict=True)]
    sums = [{"name": n, "score": s} for n, s in zip(shown.names, shown.scores, strict=True)]
    lines = max(map(len, titles))
    words = {
        "@rows": rows,
        "@heads": [*heads, {"at": end, "title": ["Score"]}],
        "@sums": [{**row, "at": end} for row in sums],
        "@names": list(shown.names),
        "@domain": [0, end + 50],
        "@above": -6 - 16 * (lines - 1),
    }
    return {**filled(_template(), words), "width": end + 50}


def _starts(most: Sequence[float], unit: float) -> list[float]:
    """Where each column begins, and where the last ends: wide enough for bar, number and title."""
    starts = [0.0]
    for points in most:
        starts.append(round(starts[-1] + max(points * unit + NUMBER_PX, LEAST_COLUMN_PX), 2))
    return starts


@cache
def _template() -> dict[str, Any]:
    import altair as alt

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
    scale = alt.Scale(domain=["@domain"], nice=False)
    start, full, at = (alt.X(f"{field}:Q", scale=scale, axis=None) for field in ("start", "full", "at"))
    rows, heads, sums = (alt.Chart(alt.InlineData(values=f"@{part}")) for part in ("rows", "heads", "sums"))
    chart = alt.layer(
        rows.mark_bar(
            size=BAR_PX, fill=LIGHT["sheet"], stroke=LIGHT["edge"], strokeWidth=1, aria=False
        ).encode(x=start, x2="full:Q", y=y),
        rows.mark_bar(size=BAR_PX, color=LIGHT["accent"]).encode(
            x=start, x2="end:Q", y=y, description="said:N"
        ),
        rows.mark_text(align="left", dx=5, fontSize=TEXT_PX, color=LIGHT["ink"], aria=False).encode(
            x=full, y=y, text="text:N"
        ),
        heads.mark_text(
            align="left",
            baseline="bottom",
            fontSize=TEXT_PX,
            fontWeight=600,
            lineHeight=16,
            color=LIGHT["ink"],
        ).encode(x=at, y=alt.value("@above"), text="title:N"),
        sums.mark_text(align="left", fontSize=NAME_PX, fontWeight=700, color=LIGHT["ink"]).encode(
            x=at, y=y, text="score:N"
        ),
    ).properties(height=alt.Step(ROW_PX))
    return template(chart)
