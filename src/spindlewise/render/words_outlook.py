"""What would change the answer: prices, weights, and needs that only just failed."""

from spindlewise.answer.near_misses import NearMiss
from spindlewise.answer.reply import Reply
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.decide.smallest_change import WeightChange
from spindlewise.decide.weight_range import WeightRange
from spindlewise.render.naming import Naming, listed, share_text
from spindlewise.render.words_figures import paid_words
from spindlewise.units import money_text, points_text


def outlook_sentences(reply: Reply, names: Naming) -> tuple[str, ...]:
    """All that would change the first place, the nearest things first."""
    pick = reply.pick
    if pick is None:
        return ()
    ranking = reply.ranking
    said = [room_words(names.product(pick.product), reply.break_evens.room, ranking.buyer.currency)]
    for follower in reply.followers:
        found = reply.break_evens.against_leader.get(follower.placed.product)
        if found is not None:
            now = money_text(follower.placed.paid.amount, follower.placed.paid.currency)
            said.append(
                break_even_words(names.product(follower.placed.product), found, now, ranking.buyer.currency)
            )
    said += [
        f"{names.product(miss.product)} would be in, and no worse than the pick, at "
        f"{money_text(amount, ranking.buyer.currency)} or less."
        for miss in reply.near_misses
        for amount in [reply.break_evens.out[miss.product].amount]
        if amount is not None
    ]
    said += [range_words(found, names) for found in reply.outlook.ranges if len(reply.outlook.ranges) > 1]
    if len(reply.outlook.ranges) > 1:
        said.append(change_words(reply.outlook.change, reply, names))
    return tuple(text for text in said if text)


def break_even_words(product: str, found: BreakEven, now: str, currency: str) -> str:
    """The price at which a follower would draw level, beside what it costs now."""
    if found.outcome is Outcome.AT_PRICE and found.amount is not None:
        level = money_text(found.amount, currency)
        return f"{product} would draw level with the pick at {level}; it costs {now}."
    if found.outcome is Outcome.HELD_BACK:
        return f"{product} cannot come first at any price while its safety notice stands."
    if found.outcome is Outcome.ANY_PRICE:
        return f"{product} keeps level with the pick at any price."
    return f"{product} would not draw level at any price, not even for nothing."


def room_words(product: str, found: BreakEven | None, currency: str) -> str:
    """How dear the pick may become before another scores more."""
    if found is None:
        return ""
    if found.outcome is Outcome.AT_PRICE and found.amount is not None:
        return f"{product} stays first up to a price of {money_text(found.amount, currency)}."
    if found.outcome is Outcome.ANY_PRICE:
        return f"{product} stays first at any price within the needs."
    return ""


def range_words(found: WeightRange, names: Naming) -> str:
    """Over which weights of one criterion the first place stays, the others keeping their proportions."""
    name, now = names.criterion(found.criterion), share_text(found.share)
    low, high = share_text(found.low), share_text(found.high)
    if found.low_rival is None and found.high_rival is None:
        return f"However much {name} counts (now {now}), the pick stays first."
    said = f"The pick stays first while {name} counts for {low} to {high} (now {now})"
    ends = []
    if found.low_rival is not None:
        ends.append(f"below that {names.product(found.low_rival)} leads")
    if found.high_rival is not None:
        ends.append(f"above it {names.product(found.high_rival)} leads")
    return f"{said}; {listed(ends)}."


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
        return f"A change of weights too small to print would let {rival} draw level."
    return f"The smallest change of weights that lets {rival} draw level: {listed(parts)}."


def near_miss_words(miss: NearMiss, names: Naming, led: bool) -> str:
    """A product that fails one need only, and would otherwise have led; `led` says that there is a pick."""
    failure = miss.failure
    safely = "out for safety, " if failure.safety else ""
    said = f"{names.product(miss.product)}: {safely}{failure.because}"
    ahead = "at or above the pick" if led else "had that need not stood"
    price = "" if failure.need == "budget" else f"; {paid_words(miss.paid)}"
    return f"{said}. It would score {points_text(miss.score)}, {ahead}{price}."
