"""What stands beside the main answer: trades between weights, promises, cranks, and seconds on a climb."""

from decimal import Decimal
from typing import TYPE_CHECKING

from spindlewise.answer.crank_caution import CrankCaution
from spindlewise.answer.gram_worth import NO_CLIMB, GramWorth
from spindlewise.answer.trades import MONEY, Trade
from spindlewise.reception.budget import Budget
from spindlewise.render.naming import Naming, listed, share_text
from spindlewise.units import (
    about_money_text,
    figure_text,
    money_text,
    number_text,
    percent_text,
    points_text,
    watts_text,
)

if TYPE_CHECKING:
    from spindlewise.answer.promised import Promise
    from spindlewise.answer.reply import Reply

NO_VERSION = ("unknown", "not applicable")


def trade_sentences(reply: "Reply", names: Naming) -> tuple[str, ...]:
    """A sentence per weight that says what it trades."""
    currency = reply.ranking.buyer.currency
    said = [trade_words(each, currency, names) for each in reply.trades]
    return tuple(text for text in said if text)


def trade_words(each: Trade, currency: str, names: Naming) -> str:
    """One weight in words of money, or of points where no money is weighed."""
    head = f"{names.title(each.criterion)} ({share_text(each.share)})"
    points = points_text(each.points)
    if each.criterion in MONEY and each.amount is not None:
        return f"{head}: {about_money_text(Decimal(repr(each.amount)), currency)} more cost {points} points."
    if each.amount is None:
        what, verb = f"the step from '{each.worse}' to '{each.better}'", ("comes", "weighs")
    elif each.amount == 1:
        what, verb = figure_text(each.amount, each.unit), ("comes", "weighs")
    else:
        what, verb = f"{each.amount:g} {each.unit}".strip(), ("come", "weigh")
    if each.money is None:
        return f"{head}: {what} {verb[0]} to {points} points."
    if each.beyond is not None:
        low, high = (about_money_text(end, currency) for end in each.beyond)
        return f"{head}: {what} {verb[1]} more than all that lies between {low} and {high}."
    return f"{head}: {what} {verb[1]} as much as about {about_money_text(each.money, currency)}."


def promise_sentences(reply: "Reply", names: Naming) -> tuple[str, ...]:
    """What promised firmware would change on the buyer's receivers, for products that come into question."""
    named = {*reply.ranking.table.products, *(miss.product for miss in reply.near_misses)}
    told = [each for each in reply.what_if.promises if each.product in named or reply.what_if.changes_pick]
    said = [promise_words(each, names) for each in told]
    if reply.what_if.changes_pick and reply.what_if.pick_then is not None:
        pick = names.product(reply.what_if.pick_then)
        said.append(f"If all promises were kept, the pick would be {pick}. A promise is not bought here.")
    return tuple(said)


def promise_words(each: "Promise", names: Naming) -> str:
    """One promise on one receiver."""
    versions = [f"firmware {v}" for v in each.firmware if v not in NO_VERSION]
    firmware = listed(versions) or "firmware of a version that nobody states"
    then = [f"show {each.then.mode}"]
    if each.then.balance == "arrives" != each.now.balance:
        then.append("receive balance")
    if each.then.stroke_metrics == "arrives" != each.now.stroke_metrics:
        then.append("receive stroke metrics")
    if each.then.mode == each.now.mode:
        then = then[1:] or then
    return (
        f"{names.product(each.product)}: {firmware} is promised, not there; "
        f"with it {each.now.receiver} would "
        f"{listed(then)} (today: {each.now.mode})."
    )


def crank_words(found: CrankCaution) -> str:
    """What a wrong crank length in the head unit does to the reading, and that no score counts it."""
    error = found.error
    at = "" if error.error_w is None else f", {watts_text(abs(error.error_w))} at threshold power"
    size = f"{percent_text(abs(error.error_pct))} {'low' if error.error_pct < 0 else 'high'}{at}"
    lengths = f"{error.set_mm:g} mm set, {error.ridden_mm:g} mm ridden"
    if not found.stated:
        return (
            f"Set the new crank length in the head unit: left as it is ({lengths}), power would read {size}."
        )
    return (
        f"The head unit has another crank length than you will ride ({lengths}): power reads {size}. "
        "Set it right; no score here counts that error."
    )


def crank_left_words(found: Budget | None, now: Budget) -> str:
    """What the pick's reading would be with the crank length left wrong; empty where there is no figure."""
    if found is None or found.expanded_pct is None or now.expanded_pct is None:
        return ""
    then, right = percent_text(found.expanded_pct), percent_text(now.expanded_pct)
    said = f"Left so, the pick's reading would stay within {then} of the truth, once set within {right}"
    if found.expanded_pct < now.expanded_pct:
        said += "; two errors would happen to take each other away, which is luck"
    return f"{said}."


def gram_price(reply: "Reply") -> str:
    """What a gram saved by the pick costs; empty where it saves none for money."""
    if reply.climb is None or reply.pick is None:
        return ""
    for step in reply.climb.steps:
        if step.product == reply.pick.product and step.cost_per_gram is not None:
            return money_text(step.cost_per_gram, reply.climb.currency)
    return ""


def gram_sentence(found: GramWorth | str, price_of_a_gram: str = "") -> str:
    """What the change of weight is worth on the buyer's climb, or what is missing to tell.

    Nothing where no climb is stated. `price_of_a_gram` is what a gram saved costs, to stand beside.
    """
    if isinstance(found, str):
        return "" if NO_CLIMB in found else f"What the weight is worth on your climb needs {found}."
    minutes = number_text(found.climb_s / 60)
    less = "saves" if found.change_s < 0 else "costs"
    seconds = number_text(abs(found.change_s), 1)
    per_hour = number_text(abs(found.per_hour_s), 1)
    each = f"{number_text(found.per_gram_s, 3)} s"
    beside = f" So {price_of_a_gram} a gram stand beside {each} a gram." if price_of_a_gram else ""
    return (
        f"On your climb of about {minutes} minutes that weight {less} {seconds} s "
        f"({per_hour} s on an hour of such climbing; road-cycling power equation of Martin et al. 1998)."
        f"{beside}"
    )
