"""The swap as a picture, to scale: what stands under the foot before and after, and what the saddle does."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import NAME_PX, TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture
from spindlewise.units import millimetres_text, number_text

PX_PER_MM = 9
BEFORE, AFTER, SADDLE = 60, 280, 500
"""Where the three columns have their middles."""
HALF_PX = 45
WIDTH = 620
INK_OF = {"pedal": "accent", "cleat": "span", "sole": "track"}


@dataclass(frozen=True, slots=True)
class Layer:
    """One thing between the pedal's axis and the foot, with its height in mm."""

    what: str
    """`pedal`, `cleat` or `sole`."""
    text: str
    height_mm: float


@dataclass(frozen=True, slots=True)
class SwapDrawn:
    """Both sides at the bottom of the stroke; what is not drawn stays as it is and cancels.

    `crank_lower_mm` is by how much the new axis stands lower than the old one there: by the change
    of crank length. `saddle_mm` is by common practice, `leg_mm` the leg model's, None where it has no answer.
    """

    old: str
    new: str
    before: tuple[Layer, ...]
    after: tuple[Layer, ...]
    crank_lower_mm: float
    saddle_mm: float
    plus_minus_mm: float
    leg_mm: float | None


def swap_picture(shown: SwapDrawn) -> Picture:
    """The picture, with 9 pixels to the millimetre everywhere in it."""
    tall = f"{_tall(shown.before)} before and {_tall(shown.after)} after"
    crank = ""
    if shown.crank_lower_mm:
        way = "lower" if shown.crank_lower_mm > 0 else "higher"
        crank = f" The crank's end stands {_mm(abs(shown.crank_lower_mm))} {way}."
    said = f"From axis to foot: {tall}.{crank} The saddle moves by {moved(shown.saddle_mm)}."
    if shown.leg_mm is not None:
        said += f" A model of the leg says {moved(shown.leg_mm)}."
    return Picture("swap", "The swap, drawn to scale", said, swap_chart, shown)


def _tall(layers: tuple[Layer, ...]) -> str:
    return ", ".join(f"{layer.text} {_mm(layer.height_mm)}" for layer in layers)


def _mm(value: float) -> str:
    return f"{number_text(value, 1)} mm"


def moved(value: float) -> str:
    """A move of the saddle with its sign, to the half millimetre."""
    return millimetres_text(value, signed=True).replace("-", "−")


def swap_chart(shown: SwapDrawn) -> dict[str, Any]:
    """The chart's specification: millimetres upwards from where the old pedal's axis stands."""
    blocks = _side(BEFORE, 0.0, shown.before) + _side(AFTER, -shown.crank_lower_mm, shown.after)
    tops = sum(layer.height_mm for layer in shown.before), blocks[-1]["top"] if shown.after else 0.0
    saddle = [_arrow(SADDLE - 10, tops[0], shown.saddle_mm, "practice", "accent")]
    if shown.leg_mm is not None:
        saddle.append(_arrow(SADDLE + 80, tops[0], shown.leg_mm, "leg model", "caution-edge"))
    axes = [
        {"x": BEFORE, "y": 0.0, "said": f"axis of the {shown.old}"},
        {"x": AFTER, "y": -shown.crank_lower_mm, "said": f"axis of the {shown.new}"},
    ]
    values = [0.0, -shown.crank_lower_mm, *tops, *(a["end"] for a in saddle)]
    low, high = min(values) - 2.0, max(values) + 5.0
    heads = [
        {"x": BEFORE, "text": "Before"},
        {"x": AFTER, "text": "After"},
        {"x": SADDLE, "text": "Saddle"},
    ]
    words = {
        "@blocks": blocks,
        "@axes": axes,
        "@saddle": saddle,
        "@heads": [{**head, "y": high - 1.0} for head in heads],
        "@ends": [{**a, "tip": "triangle-up" if a["end"] >= a["start"] else "triangle-down"} for a in saddle],
        "@lines": [
            {"y": 0.0, "x": 0, "to": AFTER - HALF_PX},
            {"y": tops[0], "x": BEFORE, "to": AFTER - HALF_PX},
            {"y": tops[0], "x": SADDLE - 55, "to": WIDTH},
        ],
        "@domain": [low, high],
    }
    return {**filled(_template(), words), "height": round((high - low) * PX_PER_MM, 2)}


def _side(middle: int, start_mm: float, layers: tuple[Layer, ...]) -> list[dict[str, Any]]:
    found, at = [], start_mm
    for layer in layers:
        top = at + layer.height_mm
        found.append(
            {
                "left": middle - HALF_PX,
                "right": middle + HALF_PX,
                "bottom": at,
                "top": top,
                "middle": (at + top) / 2,
                "ink": LIGHT[INK_OF[layer.what]],
                "text": [layer.text, _mm(layer.height_mm)],
                "said": f"{layer.text} {_mm(layer.height_mm)}",
            }
        )
        at = top
    return found


def _arrow(x: int, start_mm: float, change_mm: float, whose: str, ink: str) -> dict[str, Any]:
    return {
        "x": x,
        "start": start_mm,
        "end": start_mm + change_mm,
        "ink": LIGHT[ink],
        "text": [whose, moved(change_mm)],
        "under": min(start_mm, start_mm + change_mm),
    }


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    across = alt.Scale(domain=[0, WIDTH], nice=False)
    up = alt.Scale(domain=["@domain"], nice=False, zero=False)

    def x(field: str) -> Any:
        return alt.X(f"{field}:Q", scale=across, axis=None)

    y_axis = alt.Axis(title="mm above the old pedal's axis", tickCount=8, grid=False)

    def y(field: str) -> Any:
        return alt.Y(f"{field}:Q", scale=up, axis=y_axis)

    part = {
        name: alt.Chart(alt.InlineData(values=f"@{name}"))
        for name in ("blocks", "axes", "saddle", "heads", "ends", "lines")
    }
    ink = alt.Color("ink:N", scale=None)
    chart = alt.layer(
        part["lines"]
        .mark_rule(color=LIGHT["edge"], strokeDash=[4, 4], aria=False)
        .encode(x=x("x"), x2="to:Q", y=y("y")),
        part["blocks"]
        .mark_rect(stroke=LIGHT["edge"], strokeWidth=1.5)
        .encode(
            x=x("left"),
            x2="right:Q",
            y=y("bottom"),
            y2="top:Q",
            fill=alt.Fill("ink:N", scale=None),
            description="said:N",
        ),
        part["blocks"]
        .mark_text(align="left", dx=8, dy=-4, lineHeight=16, fontSize=TEXT_PX, color=LIGHT["ink"])
        .encode(x=x("right"), y=y("middle"), text="text:N"),
        part["axes"]
        .mark_point(filled=True, size=140, opacity=1, color=LIGHT["ink"])
        .encode(x=x("x"), y=y("y"), description="said:N"),
        part["saddle"]
        .mark_rule(strokeWidth=3, aria=False)
        .encode(x=x("x"), y=y("start"), y2="end:Q", color=ink),
        part["ends"]
        .mark_point(filled=True, size=130, opacity=1, aria=False)
        .encode(x=x("x"), y=y("end"), shape=alt.Shape("tip:N", scale=None), color=ink),
        part["saddle"]
        .mark_text(dy=24, lineHeight=17, fontSize=TEXT_PX, color=LIGHT["ink"])
        .encode(x=x("x"), y=y("under"), text="text:N"),
        part["heads"]
        .mark_text(fontSize=NAME_PX, fontWeight=700, color=LIGHT["ink"])
        .encode(x=x("x"), y=y("y"), text="text:N"),
    ).properties(width=WIDTH)
    return template(chart)
