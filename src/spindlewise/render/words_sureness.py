"""How sure the pick is: worlds, second opinions, and what is odd about the question itself."""

from collections.abc import Sequence

from spindlewise.answer.doubts import Doubts
from spindlewise.answer.reply import Reply
from spindlewise.decide.second_opinions import SecondOpinion
from spindlewise.decide.stability import Stability
from spindlewise.decide.warnings import CountedTwice, NobodyLeft, WithoutEffect
from spindlewise.render.naming import Naming, listed, share_text
from spindlewise.units import money_text, number_text, percent_text

SURE = {"very": "very sure", "fairly": "fairly sure", "barely": "barely sure"}
NEEDS = {
    "budget": "the budget",
    "rider weight": "the rider's weight",
    "cleats": "the shoes",
    "reading": "both sides at the receiver",
    "balance": "balance at the receiver",
    "water": "the ingress code",
    "weight": "the greatest weight",
    "running time": "the least running time",
    "warranty": "the least warranty",
}
TAU = "Kendall's tau-b tells how alike two orders are: 1 is the same order, 0 no likeness, -1 the reverse."
USUAL_RATIO = 0.1
"""Up to here pairwise comparisons are taken to agree well enough (Saaty 1977)."""
TELLING_RATIO = 1.1
"""A criterion counted for less than a tenth more than the buyer said explains nothing."""
LEAST_SHOWN = 0.005
"""Products that are first in fewer than one world of 200 are not named."""


def sureness_sentences(reply: Reply, names: Naming) -> tuple[str, ...]:
    """The worlds in which the pick stays first, then what other methods say."""
    found = reply.outlook.stability
    if reply.pick is None or found is None:
        return ()
    said = [world_words(found, reply.pick.product, names)]
    said.append(
        "A world is drawn with weights around yours (you are "
        f"{SURE[reply.ranking.buyer.weights.sure]} of them), figures within their plus-minus, and unknown "
        f"figures anywhere that is plausible; {found.draws:,} were drawn."
    )
    said += [opinion_words(opinion, names) for opinion in reply.outlook.second_opinions]
    if any(opinion.tau_b is not None for opinion in reply.outlook.second_opinions):
        said.append(TAU)
    return tuple(said)


def world_words(found: Stability, pick: str, names: Naming) -> str:
    """In how many of 100 worlds the pick is first, and who is first in the others."""
    chances = dict(zip(found.products, found.first.tolist(), strict=True))
    error = float(found.standard_error([chances[pick]])[0])
    others = sorted(
        ((chance, name) for name, chance in chances.items() if name != pick and chance >= LEAST_SHOWN),
        key=lambda each: (-each[0], each[1]),
    )
    said = f"{names.product(pick)} comes first in {worlds_of_100(chances[pick])}"
    if error > 0:
        said += f" (give or take {number_text(200 * error, 1)})"
    if not others:
        return f"{said}."
    rest = [f"{names.product(name)} in {number_text(100 * chance)}" for chance, name in others[:3]]
    return f"{said}; {listed(rest)}."


def worlds_of_100(chance: float) -> str:
    """A chance as worlds out of 100, without ever rounding to none or all what is neither.

    >>> worlds_of_100(0.826), worlds_of_100(0.9999), worlds_of_100(1.0)
    ('83 of 100 worlds', 'more than 99 of 100 worlds', 'all worlds drawn')
    """
    if chance == 1:
        return "all worlds drawn"
    if chance > 0.995:
        return "more than 99 of 100 worlds"
    if 0 < chance < 0.005:
        return "less than 1 of 100 worlds"
    return f"{number_text(100 * chance)} of 100 worlds"


def opinion_words(opinion: SecondOpinion, names: Naming) -> str:
    """What another method of the trade puts first and, where it differs, why."""
    alike = "" if opinion.tau_b is None else f" (tau-b {number_text(opinion.tau_b, 2)})"
    said = f"By another method, {opinion.method}, {names.product(opinion.first)} comes first{alike}"
    if opinion.reason is None:
        return f"{said}, as here."
    parts = []
    if opinion.reason.reversed_by:
        gone = listed([names.product(name) for name in opinion.reason.reversed_by[:3]])
        parts.append(
            f"it measures each product by the others, and without {gone} it would agree (a rank reversal)"
        )
    stretched = [
        f"{names.criterion(each.criterion)} counts {share_text(each.effective_share)} there in place of your "
        f"{share_text(each.share)}"
        for each in opinion.reason.stretched[:2]
        if each.effective_share is not None and (each.ratio or 0.0) >= TELLING_RATIO
    ]
    if stretched:
        parts.append(
            f"since it stretches each scale from the worst to the best of these products, {listed(stretched)}"
        )
    if not parts:
        return f"{said}. It measures each product by the others; the scales here are fixed."
    return f"{said}: {'; '.join(parts)}. The scales here are fixed and do not depend on the others."


def doubt_sentences(reply: Reply, names: Naming) -> tuple[str, ...]:
    """Warnings about the question: what is counted twice, decides nothing, or keeps everybody out."""
    found: Doubts = reply.doubts
    said = [twice_words(each, names) for each in found.twice]
    said += [
        f"All candidates are alike on {names.criterion(each.criterion)}: "
        f"its {share_text(each.share)} of the weight tells nobody apart."
        for each in found.alike
    ]
    alike = {each.criterion for each in found.alike}
    said += idle_sentences([each for each in found.idle if each.criterion not in alike], reply, names)
    if found.nobody is not None:
        said += nobody_words(found.nobody, names)
    currency = reply.ranking.buyer.currency
    said += [
        f"{names.product(each.product)} misses the budget by little: "
        f"{money_text(each.over, currency)}, {percent_text(float(each.over_pct))}."
        for each in found.missed
    ]
    pairs = reply.ranking.weighed.pairs
    if pairs is not None and pairs.contradiction is not None:
        odd = pairs.contradiction
        said.append(
            f"{agreement_words(pairs.ratio)} That {names.criterion(odd.more)} matters "
            f"{number_text(odd.times, 1)} times as much as {names.criterion(odd.than)} fits least: "
            f"the others suggest {number_text(odd.fits, 1)} times."
        )
    elif pairs is not None and pairs.ratio is not None:
        said.append(agreement_words(pairs.ratio))
    return tuple(said)


def agreement_words(ratio: float | None) -> str:
    """How well pairwise comparisons agree."""
    if ratio is None:
        return "Your comparisons do not quite agree."
    shown = (
        f"(consistency ratio {number_text(ratio, 3)}; 0 is without any contradiction, "
        f"up to {USUAL_RATIO} will do)"
    )
    return (
        f"Your comparisons agree well enough {shown}."
        if ratio <= 0.1
        else f"Your comparisons disagree {shown}."
    )


def idle_sentences(idle: Sequence[WithoutEffect], reply: Reply, names: Naming) -> list[str]:
    """Which weights decide nothing, and why: the order is the same without them."""
    found = [each for each in idle if each.kind == "order stays"]
    if not found:
        return []
    weights = listed(f"{names.criterion(each.criterion)} ({share_text(each.share)})" for each in found)
    count = len(reply.ranking.table.products)
    everyone = "both products" if count == 2 else f"all {count} products"
    if len(found) == 1:
        return [
            f"The weight of {weights} decides nothing here: "
            f"the other weights alone put {everyone} in the same order."
        ]
    return [
        f"The weights of {weights} decide nothing here, each for itself: "
        f"leave out any one of them, and the others put {everyone} in the same order."
    ]


def twice_words(each: CountedTwice, names: Naming) -> str:
    """Two criteria that count one thing twice, or against each other."""
    first, second = names.criterion(each.first), names.criterion(each.second)
    if each.kind == "kin":
        why = KIN_BECAUSE.get(frozenset((each.first, each.second)), "")
        return f"{names.title(each.first)} and {second} partly count the same thing twice{why}."
    if each.kind == "move together":
        return f"Among these candidates {first} and {second} go together: they may count one thing twice."
    return f"Among these candidates {first} and {second} pull against each other."


KIN_BECAUSE = {
    frozenset(("reading_uncertainty", "detail")): ": a side that is doubled loses points on both",
    frozenset(("price", "ownership")): ": the price is part of what owning costs",
}
"""Why two criteria are of one kind."""


def nobody_words(found: NobodyLeft, names: Naming) -> list[str]:
    """Which single need, dropped, would bring back the most."""
    if not found.relief:
        return ["Nothing meets all needs, and no single need, dropped, would bring anything back."]
    said = []
    for need, back in found.relief[:3]:
        shown = [names.product(name) for name in back[:3]]
        if len(back) > len(shown):
            shown.append(f"{len(back) - len(shown)} more")
        said.append(f"Without {NEEDS.get(need, need)} there would be {listed(shown)}.")
    return said
