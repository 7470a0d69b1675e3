"""The swap's picture from its figures: what stands between axis and foot on both sides, layer by layer."""

from datetime import date

from spindlewise.answer.swap import TOP, Swap
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.figure import Known, stack_mm
from spindlewise.catalog.product import Product
from spindlewise.fit.saddle import SaddleChange, StackBasis
from spindlewise.render.blocks import Column, Table
from spindlewise.render.naming import Naming
from spindlewise.site.chart_swap import Layer, SwapDrawn, moved, swap_picture
from spindlewise.site.figured import Figured, figured
from spindlewise.units import number_text

SAME_MM = 1e-6
"""So little may lie between the layers drawn and the change that was worked out."""


def swap_figured(swap: Swap, buyer: Buyer, names: Naming) -> tuple[Figured, ...]:
    """The picture; none where a figure is missing, or where the layers do not add up to the change."""
    saddle = swap.saddle
    if not isinstance(saddle, SaddleChange):
        return ()
    before = _layers(swap.old, swap.day, saddle.basis)
    after = _layers(swap.new, swap.day, saddle.basis)
    if before is None or after is None:
        return ()
    soles = _soles(buyer)
    if soles:
        before, after = (*before, soles[0]), (*after, soles[1])
    lower_mm = -saddle.crank_mm
    rises_mm = sum(layer.height_mm for layer in after) - sum(layer.height_mm for layer in before) - lower_mm
    if abs(rises_mm - saddle.change_mm) > SAME_MM:
        return ()
    leg = swap.leg.change
    shown = SwapDrawn(
        names.product(swap.old.id),
        names.product(swap.new.id),
        before,
        after,
        lower_mm,
        saddle.change_mm,
        saddle.plus_minus_mm,
        leg.saddle_mm if leg else None,
    )
    return figured(swap_picture(shown), _caption(shown, bool(soles)), _table(shown))


def _layers(product: Product, day: date, basis: StackBasis) -> tuple[Layer, ...] | None:
    stack, cleat = stack_mm(product, day, basis), product.cleat.height_mm
    if basis == TOP:
        if not isinstance(stack, Known):
            return None
        above = () if isinstance(cleat, str) or cleat == 0 else (Layer("cleat", "cleat", cleat),)
        return (Layer("pedal", "pedal", stack.value), *above)
    if isinstance(stack, Known):
        return (Layer("pedal", "pedal and cleat", stack.value),)
    top = stack_mm(product, day, TOP)
    if not isinstance(top, Known) or isinstance(cleat, str):
        return None
    return (Layer("pedal", "pedal and cleat", top.value + cleat),)


def _soles(buyer: Buyer) -> tuple[Layer, Layer] | None:
    """Both soles where they are known; a sole that stays and was never measured cancels and is not drawn."""
    old, new = buyer.shoes.sole_mm, buyer.shoes.new_sole_mm
    if isinstance(old, str):
        return None
    return Layer("sole", "sole", old), Layer("sole", "sole", old if isinstance(new, str) else new)


def _caption(shown: SwapDrawn, with_soles: bool) -> str:
    said = "Everything at one scale, at the bottom of the stroke; a dot is the pedal’s axis."
    if shown.crank_lower_mm:
        way = "lower" if shown.crank_lower_mm > 0 else "higher"
        said += f" The new crank holds its axis {number_text(abs(shown.crank_lower_mm), 1)} mm {way}."
    said += " The foot stands on top, and the saddle goes where the foot went."
    return said if with_soles else f"{said} The sole stays and is not drawn."


def _table(shown: SwapDrawn) -> Table:
    rows = []
    for what in ("pedal", "cleat", "sole"):
        old, new = (next((x for x in side if x.what == what), None) for side in (shown.before, shown.after))
        found = old or new
        if found:
            heights = [layer.height_mm if layer else 0.0 for layer in (old, new)]
            rows.append(_row(found.text.capitalize(), heights[0], heights[1]))
    if shown.crank_lower_mm:
        down = number_text(-shown.crank_lower_mm, 1, signed=True).replace("-", "−")
        rows.append(("Axis at the bottom of the stroke", "", "", f"{down} mm"))
    rows.append(("Saddle, by common practice", "", "", moved(shown.saddle_mm)))
    if shown.leg_mm is not None:
        rows.append(("Saddle, by the leg model", "", "", moved(shown.leg_mm)))
    columns = (Column("What"), Column("Before", "right"), Column("After", "right"), Column("Change", "right"))
    return Table("Heights between axis and foot", columns, tuple(rows))


def _row(what: str, old_mm: float, new_mm: float) -> tuple[str, str, str, str]:
    change = number_text(new_mm - old_mm, 1, signed=True).replace("-", "−")
    return what, f"{number_text(old_mm, 1)} mm", f"{number_text(new_mm, 1)} mm", f"{change} mm"
