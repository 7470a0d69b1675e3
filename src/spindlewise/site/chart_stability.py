"""How sure the order is, as a picture: a disc for each place of each product, by how often it takes it."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.render.words_sureness import worlds_of_100
from spindlewise.site.chart_style import MOST_ROWS, NAME_PX, ROW_PX, TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture
from spindlewise.units import number_text

COLUMN_PX = 38
FULL_DISC_PX2 = 700
"""Area of the disc of a place that is taken in every world; others in proportion."""
WRITTEN_FROM = 0.4
"""Discs of chances below this are too small to hold a number; it stands in the table."""


@dataclass(frozen=True, slots=True)
class Chances:
    """Products in the order of the ranking; `places` has a row for each, with the chance of each column.

    Where there are more places than columns, the last column is all further places together.
    """

    names: tuple[str, ...]
    columns: tuple[str, ...]
    places: tuple[tuple[float, ...], ...]
    draws: int
    more: int
    """So many products stand further down and are not shown."""


def chances(names: Sequence[str], places: Sequence[Sequence[float]], draws: int) -> Chances:
    """The first rows of a square table of chances, as many as a picture can hold."""
    count = len(names)
    shown = min(count, MOST_ROWS)
    columns = [str(place) for place in range(1, shown + 1)]
    rows = [tuple(float(c) for c in row[:shown]) for row in places[:shown]]
    if count > shown:
        columns[-1] = f"{shown} on"
        rows = [(*row[:-1], float(sum(whole[shown - 1 :]))) for row, whole in zip(rows, places, strict=False)]
    return Chances(tuple(names[:shown]), tuple(columns), tuple(rows), draws, count - shown)


def stability_picture(shown: Chances) -> Picture | None:
    """The picture; none for fewer than two products, whose places say nothing."""
    if len(shown.names) < 2:
        return None
    return Picture("stability", "How often each place", _described(shown), stability_chart, shown)


def _described(shown: Chances) -> str:
    first = [(row[0], name) for name, row in zip(shown.names, shown.places, strict=True) if row[0] >= 0.005]
    said = "; ".join(f"{name} in {worlds_of_100(chance)}" for chance, name in sorted(first, reverse=True))
    return f"How often each pedal takes each place in {shown.draws:,} worlds drawn. First comes {said}."


def chance_text(chance: float) -> str:
    """A chance in percent that is never rounded to all or nothing.

    >>> chance_text(0.834), chance_text(0.0004), chance_text(0.9996), chance_text(0.0)
    ('83 %', 'under 1 %', 'over 99 %', 'never')
    """
    if chance == 0:
        return "never"
    if chance == 1:
        return "always"
    if chance < 0.005:
        return "under 1 %"
    return "over 99 %" if chance > 0.995 else f"{number_text(100 * chance)} %"


def stability_chart(shown: Chances) -> dict[str, Any]:
    """The chart's specification."""
    rows = [
        {
            "name": name,
            "place": place,
            "area": round(FULL_DISC_PX2 * chance, 2),
            "number": _written(chance),
            "said": f"{name}, place {place}: {chance_text(chance)}",
        }
        for name, row in zip(shown.names, shown.places, strict=True)
        for place, chance in zip(shown.columns, row, strict=True)
        if chance > 0
    ]
    words = {"@rows": rows, "@names": list(shown.names), "@places": list(shown.columns)}
    found: dict[str, Any] = filled(_template(), words)
    return found


def _written(chance: float) -> str:
    """The chance in percent where its disc is large enough; all and nothing only where they are meant."""
    if chance < WRITTEN_FROM:
        return ""
    return ">99" if 0.995 < chance < 1 else number_text(100 * chance)


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    base = alt.Chart(alt.InlineData(values="@rows"))
    x = alt.X(
        "place:O",
        sort=None,
        scale=alt.Scale(domain=["@places"]),
        title="Place",
        axis=alt.Axis(orient="top", labelAngle=0, grid=False, domain=False, ticks=False, titleAnchor="start"),
    )
    y = alt.Y(
        "name:N",
        sort=None,
        scale=alt.Scale(domain=["@names"]),
        title=None,
        axis=alt.Axis(
            labelFontSize=NAME_PX,
            labelColor=LIGHT["ink"],
            grid=True,
            domain=False,
            ticks=False,
            labelPadding=10,
        ),
    )
    chart = alt.layer(
        base.mark_circle(color=LIGHT["accent"], opacity=1).encode(
            x=x, y=y, size=alt.Size("area:Q", scale=None), description="said:N"
        ),
        base.mark_text(color=LIGHT["sheet"], fontSize=TEXT_PX - 1, fontWeight=700, aria=False).encode(
            x=x, y=y, text="number:N"
        ),
    ).properties(width=alt.Step(COLUMN_PX), height=alt.Step(ROW_PX))
    return template(chart)
