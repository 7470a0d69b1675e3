"""The ladder: which products are worth climbing to for less weight, and what each further gram costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from spindlewise.cost.quadrants import (
    Comparison,
    Interval,
    Offer,
    Quadrant,
    compare,
    exact_g,
    per_gram,
    saving_g,
)

Status = Literal[
    "baseline",
    "rung",
    "lighter and not dearer",
    "heavier and cheaper",
    "dominated",
    "extendedly dominated",
    "no reliable saving",
]
"""`rung` and `lighter and not dearer` stand on the ladder (the latter only as its first step: it takes the
baseline's place); `heavier and cheaper` lies below its foot; the other three are off it."""


@dataclass(frozen=True, slots=True)
class LadderStep:
    """One product's place on the ladder, or the reason why it has none.

    `saving_g`, `extra_cost`, `cost_per_gram` and `saved_per_gram` are against the baseline.
    `step_cost_per_gram` and `step_saving_g` are against the step below, `step_from`, and stand for rungs.
    `dominated_by` names who is no heavier and no dearer or, for extended dominance, the steps around it.
    The baseline may itself be dominated; its status stays `baseline`.
    """

    product: str
    status: Status
    quadrant: Quadrant | None
    saving_g: Interval
    extra_cost: Decimal
    cost_per_gram: Decimal | None = None
    cost_per_gram_range: tuple[Decimal, Decimal] | None = None
    saved_per_gram: Decimal | None = None
    step_from: str | None = None
    step_saving_g: Interval | None = None
    step_cost_per_gram: Decimal | None = None
    dominated_by: tuple[str, ...] = ()


def ladder(baseline: Offer, offers: Sequence[Offer]) -> tuple[LadderStep, ...]:
    """The baseline, then the steps that are worth their price in order of climbing, then all others by price.

    Incremental cost-effectiveness as health economics has it (cost = price, effect = grams saved): dominated
    products go first (another is no dearer and no heavier; of two alike the later by id), then extendedly
    dominated ones (a gram costs more to get here than on to the next step), until the price of each further
    gram never falls. Equal step prices stay. Offers whose saving's interval holds zero take no part, and
    neither do heavier ones in the climb. All are compared at their expected weights.

    Raises ValueError where a product is given twice.

    >>> owned = Offer("owned", Decimal(0), 320, 320, 320)
    >>> [(s.product, s.step_cost_per_gram) for s in ladder(owned, [
    ...     Offer("light", Decimal(60), 300, 300, 300), Offer("lightest", Decimal(160), 280, 280, 280)])]
    [('owned', None), ('light', Decimal('3')), ('lightest', Decimal('5'))]
    """
    _refuse_twins([baseline, *offers])
    found = {offer.product: compare(baseline, offer) for offer in offers}
    told = [o for o in offers if found[o.product].quadrant != "no reliable saving"]
    field = [baseline, *told]
    over = _dominators(field)
    foot = [] if over[baseline.product] else [baseline]
    lighter = [o for o in told if found[o.product].saving_g.expected > 0 and not over[o.product]]
    climb = _climb(foot + sorted(lighter, key=_by_price))
    on_ladder = {o.product: place for place, o in enumerate(climb)}
    nothing = Interval(0.0, 0.0, 0.0)
    first = LadderStep(
        baseline.product, "baseline", None, nothing, Decimal(0), dominated_by=over[baseline.product]
    )
    steps = [
        _step(offer, found[offer.product], over.get(offer.product, ()), climb, on_ladder.get(offer.product))
        for offer in sorted(offers, key=lambda o: (o.product not in on_ladder, *_by_price(o)))
    ]
    return (first, *steps)


def _refuse_twins(offers: Sequence[Offer]) -> None:
    names = [offer.product for offer in offers]
    for name in names:
        if names.count(name) > 1:
            raise ValueError(
                f"the ladder has the product {name} twice; give each product, baseline too, once"
            )


def _by_price(offer: Offer) -> tuple[Decimal, Decimal, str]:
    return offer.price, exact_g(offer.weight_g), offer.product


def _dominators(field: Sequence[Offer]) -> dict[str, tuple[str, ...]]:
    """Who is no dearer and no heavier, and better in one of both or, where all is alike, earlier by id.

    In order of price, then weight, then id, only those further up can be.
    """
    ordered = sorted(field, key=_by_price)
    return {
        offer.product: tuple(sorted(o.product for o in ordered[:place] if o.weight_g <= offer.weight_g))
        for place, offer in enumerate(ordered)
    }


def _slope(below: Offer, above: Offer) -> Fraction:
    """Money per gram from one step to the next, exactly: rounding must not decide who stays."""
    return Fraction(above.price - below.price) / Fraction(exact_g(below.weight_g) - exact_g(above.weight_g))


def _climb(undominated: Sequence[Offer]) -> list[Offer]:
    """Drops whoever costs more per gram than the step after it, looking back after each drop."""
    kept: list[Offer] = []
    for offer in undominated:
        while len(kept) > 1 and _slope(kept[-2], kept[-1]) > _slope(kept[-1], offer):
            kept.pop()
        kept.append(offer)
    return kept


def _step(
    offer: Offer, found: Comparison, over: tuple[str, ...], climb: Sequence[Offer], place: int | None
) -> LadderStep:
    status: Status = "rung"
    step_from: str | None = None
    step_saving: Interval | None = None
    step_price: Decimal | None = None
    if found.quadrant == "no reliable saving":
        status = "no reliable saving"
    elif over:
        status = "dominated"
    elif found.quadrant == "heavier and cheaper":
        status = "heavier and cheaper"
    elif place is None:
        status = "extendedly dominated"
        above = next(i for i, step in enumerate(climb) if step.price > offer.price)
        over = (climb[above - 1].product, climb[above].product)
    elif place == 0:
        status = "lighter and not dearer"
    else:
        below = climb[place - 1]
        step_from, step_saving = below.product, saving_g(below, offer)
        step_price = per_gram(offer.price - below.price, exact_g(below.weight_g) - exact_g(offer.weight_g))
    return LadderStep(
        product=offer.product,
        status=status,
        quadrant=found.quadrant,
        saving_g=found.saving_g,
        extra_cost=found.extra_cost,
        cost_per_gram=found.cost_per_gram,
        cost_per_gram_range=found.cost_per_gram_range,
        saved_per_gram=found.saved_per_gram,
        step_from=step_from,
        step_saving_g=step_saving,
        step_cost_per_gram=step_price,
        dominated_by=over,
    )
