"""What would change the answer: prices, weights, and needs that only just failed."""

from collections.abc import Sequence

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.near_misses import NearMiss
from spindlewise.answer.reply import Reply
from spindlewise.buyer.buyer import Buyer
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.decide.smallest_change import WeightChange
from spindlewise.decide.weight_range import WeightRange
from spindlewise.render.naming import Naming, listed, share_text
from spindlewise.render.words_figures import paid_words
from spindlewise.units import money_text, points_text


def outlook_sentences(reply: Reply, names: Naming) -> tuple[str, ...]:
    """All that would change the first place, the nearest things first."""
    if reply.pick is None:
        return ()
    said = price_sentences(reply, names)
    if len(reply.outlook.ranges) > 1:
        said += range_sentences(reply.outlook.ranges, names)
        said.append(change_words(reply.outlook.change, reply, names))
    return tuple(text for text in said if text)


def price_sentences(reply: Reply, names: Naming) -> list[str]:
    """How dear the pick may become, and what the others would have to cost."""
    pick, even, currency = reply.pick, reply.break_evens, reply.ranking.buyer.currency
    if pick is None:
        return []
    if even.flat_beyond is None:
        return ["Neither price nor ownership is weighed, so no price changes the order."]
    said = [room_words(names.product(pick.product), even, reply.ranking.buyer)]
    never = []
    for follower in reply.followers:
        name, found = names.product(follower.placed.product), even.against_leader.get(follower.placed.product)
        if found is None:
            continue
        if found.outcome is Outcome.NO_PRICE:
            never.append(name)
            continue
        now = money_text(follower.placed.paid.amount, follower.placed.paid.currency)
        said.append(break_even_words(name, found, now, currency))
    if never:
        said.append(f"{listed(never)} would score less than the pick at any price, even for nothing.")
    said += [
        f"{names.product(miss.product)} would be in, and no worse than the pick, at "
        f"{money_text(amount, currency)} or less."
        for miss in reply.near_misses
        for amount in [even.out[miss.product].amount]
        if amount is not None
    ]
    return said


def break_even_words(product: str, found: BreakEven, now: str, currency: str) -> str:
    """The price at which a follower would score as much as the pick, beside what it costs now."""
    if found.outcome is Outcome.AT_PRICE and found.amount is not None:
        amount = money_text(found.amount, currency)
        return f"{product} would score as much as the pick at {amount}; it costs {now}."
    if found.outcome is Outcome.HELD_BACK:
        return f"{product} cannot come first at any price while its safety notice stands."
    return f"{product} scores as much as the pick at any price."


def room_words(product: str, even: BreakEvens, buyer: Buyer) -> str:
    """How dear the pick may become before another scores more, or the budget is spent."""
    found, budget, currency = even.room, buyer.budget_amount, buyer.currency
    if found is None or found.outcome not in (Outcome.AT_PRICE, Outcome.ANY_PRICE):
        return ""
    spent = "" if budget is None else money_text(budget, currency)
    if found.amount is not None:
        amount = money_text(found.amount, currency)
        if budget is not None and found.amount > budget:
            return f"{product} stays first up to the budget of {spent}; by its score, up to {amount}."
        return f"{product} stays first up to a price of {amount}."
    said = f"{product} stays first at any price"
    said += f" up to the budget of {spent}" if spent else ""
    if not even.against_leader:
        return f"{said}, since nothing else meets the needs."
    if even.flat_beyond is not None and (budget is None or even.flat_beyond < budget):
        said += f": beyond {money_text(even.flat_beyond, currency)} dearer costs no more points"
    return f"{said}."


def range_sentences(ranges: Sequence[WeightRange], names: Naming) -> list[str]:
    """Over which weights the first place stays; criteria that never take it away share a sentence."""
    never = [each for each in ranges if each.low_rival is None and each.high_rival is None]
    said = [range_words(each, names) for each in ranges if each not in never]
    if never:
        what = listed(
            (f"{names.criterion(each.criterion)} (now {share_text(each.share)})" for each in never), "or"
        )
        said.append(f"However much {what} counts, the pick stays first.")
    if said:
        said[0] += " The other weights keep their proportions here."
    return said


def range_words(found: WeightRange, names: Naming) -> str:
    """Over which weights of one criterion the first place stays, the others keeping their proportions."""
    name, now = names.criterion(found.criterion), share_text(found.share)
    low, high = share_text(found.low), share_text(found.high)
    ends = []
    if found.low_rival is not None:
        ends.append(f"below that {names.product(found.low_rival)} leads")
    if found.high_rival is not None:
        ends.append(f"above {'that' if not ends else 'it'} {names.product(found.high_rival)} leads")
    within = f"{low} to {high}"
    if found.low_rival is None:
        within = f"at most {high}"
    elif found.high_rival is None:
        within = f"at least {low}"
    return f"The pick stays first while {name} counts for {within} (now {now}); {listed(ends)}."


def change_words(change: WeightChange | None, reply: Reply, names: Naming) -> str:
    """The smallest change of weights that takes the first place away."""
    if change is None:
        return "No weights at all would put another product first."
    now, rival = reply.ranking.weighed.by_name, names.product(change.product)
    parts = [
        f"{names.criterion(name)} {share_text(float(share))} instead of {share_text(now[name])}"
        for name, share in zip(reply.ranking.table.criteria, change.shares, strict=True)
        if share_text(float(share)) != share_text(now[name])
    ]
    if not parts:
        return f"A change of weights too small to print would bring {rival} to the pick's score."
    return f"The smallest change of weights that brings {rival} to the pick's score: {listed(parts)}."


def near_miss_words(miss: NearMiss, names: Naming, led: bool) -> str:
    """A product that fails one need only, and would otherwise have led; `led` says that there is a pick."""
    failure = miss.failure
    safely = "out for safety, " if failure.safety else ""
    said = f"{names.product(miss.product)}: {safely}{failure.because}"
    ahead = "at or above the pick" if led else "had that need not stood"
    price = "" if failure.need == "budget" else f"; {paid_words(miss.paid)}"
    return f"{said}. It would score {points_text(miss.score)}, {ahead}{price}."
