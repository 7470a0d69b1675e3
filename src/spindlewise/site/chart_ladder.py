"""The ladder as a picture: grams saved against money, the steps that are worth their price joined."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from spindlewise.site.chart_style import filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture

WIDTH, HEIGHT = 620, 320


@dataclass(frozen=True, slots=True)
class Rung:
    """One product: what it saves and costs against the baseline; `number` is its step, 0 where it has none.

    The baseline itself is no rung; it stands at 0 g and 0 of the currency.
    """

    name: str
    number: int
    saving_low_g: float
    saving_g: float
    saving_high_g: float
    extra: float
    extra_text: str
    saving_text: str


@dataclass(frozen=True, slots=True)
class Ladder:
    """What the picture shows."""

    baseline: str
    on_it: bool
    """Whether the ladder begins at the baseline: not where something is lighter and no dearer."""
    currency: str
    owned: bool
    rungs: tuple[Rung, ...]


def ladder_picture(
    baseline: str, on_it: bool, currency: str, owned: bool, rungs: Sequence[Rung]
) -> Picture | None:
    """The picture; none where nothing stands beside the baseline."""
    if not rungs:
        return None
    steps = [rung for rung in sorted(rungs, key=lambda r: (r.number, r.name)) if rung.number]
    said = "; ".join(f"{r.number}: {r.name}, {r.saving_text} for {r.extra_text}" for r in steps)
    told = f"Steps worth their price: {said}." if steps else "No step is worth its price."
    words = f"Grams saved against money, beginning at the {baseline}. {told}"
    shown = Ladder(baseline, on_it, currency, owned, tuple(sorted(rungs, key=lambda r: r.name)))
    return Picture("ladder", "What each gram saved costs", words, ladder_chart, shown)


def ladder_chart(shown: Ladder) -> dict[str, Any]:
    """The chart's specification."""
    base = {"saving": 0.0, "low": 0.0, "high": 0.0, "extra": 0.0, "number": "0", "said": shown.baseline}
    rows = [{**base, "kind": "start", "step": 0 if shown.on_it else None}]
    rows += [
        {
            "saving": rung.saving_g,
            "low": rung.saving_low_g,
            "high": rung.saving_high_g,
            "extra": rung.extra,
            "number": str(rung.number) if rung.number else "",
            "kind": "step" if rung.number else "off",
            "step": rung.number or None,
            "said": f"{rung.name}: {rung.saving_text}, {rung.extra_text}",
        }
        for rung in shown.rungs
    ]
    grams = [float(g) for rung in shown.rungs for g in (rung.saving_low_g, rung.saving_high_g)] + [0.0]
    money = [rung.extra for rung in shown.rungs] + [0.0]
    words = {
        "@rows": rows,
        "@grams": _room(grams),
        "@money": _room(money),
        "@title": f"Costs, {shown.currency}" if shown.owned else f"Costs more, {shown.currency}",
    }
    found: dict[str, Any] = filled(_template(), words)
    return found


def _room(values: Sequence[float]) -> list[float]:
    span = max(values) - min(values) or 1.0
    return [min(values) - 0.08 * span, max(values) + 0.12 * span]


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    base = alt.Chart(alt.InlineData(values="@rows"))
    x = alt.X(
        "saving:Q",
        title="Lighter by, g (heavier to the left of 0)",
        scale=alt.Scale(domain=["@grams"], nice=False),
        axis=alt.Axis(tickCount=7),
    )
    y = alt.Y(
        "extra:Q",
        title="@title",
        scale=alt.Scale(domain=["@money"], nice=False),
        axis=alt.Axis(tickCount=6),
    )
    named = alt.Description("said:N")
    steps, off, numbered = "datum.kind != 'off'", "datum.kind == 'off'", "datum.number != ''"
    chart = alt.layer(
        base.transform_filter("datum.step != null")
        .mark_line(color=LIGHT["accent"], strokeWidth=2, aria=False)
        .encode(x=x, y=y, order="step:Q"),
        base.mark_rule(color=LIGHT["span"], strokeWidth=2.5, aria=False).encode(
            x=alt.X("low:Q"), x2="high:Q", y=y
        ),
        base.transform_filter(off)
        .mark_point(filled=True, size=55, opacity=1, color=LIGHT["edge"])
        .encode(x=x, y=y, description=named),
        base.transform_filter(steps)
        .mark_point(filled=True, size=95, opacity=1, color=LIGHT["accent"])
        .encode(x=x, y=y, description=named),
        base.transform_filter(numbered)
        .mark_text(align="right", dx=-8, dy=-11, fontSize=15, fontWeight=700, color=LIGHT["ink"], aria=False)
        .encode(x=x, y=y, text="number:N"),
    ).properties(width=WIDTH, height=HEIGHT)
    return template(chart)
