"""What a product shows on each of the buyer's receivers, and how far that reading may be trusted."""

from spindlewise.answer.freed_channel import Freed
from spindlewise.answer.ranking import Placed
from spindlewise.answer.trust import side_error
from spindlewise.buyer.buyer import Buyer
from spindlewise.buyer.receiver import Receiver
from spindlewise.catalog.product import Product
from spindlewise.reception.channel_budget import channel_budget
from spindlewise.reception.reading_mode import Reception
from spindlewise.render.blocks import Block, Bullets, Paragraph
from spindlewise.render.naming import Naming, listed
from spindlewise.render.words_budget import budget_blocks, trust_words
from spindlewise.render.words_doubled import doubled_words

SHOWS = {
    "both sides": "shows the power of both legs",
    "one side doubled": "shows one leg's power doubled",
    "one side only": "shows one leg's power only, half a reading",
    "nothing": "shows nothing",
}
ARRIVES = {
    "arrives": "arrive",
    "does not arrive": "do not arrive",
    "unknown": "may or may not arrive (nobody says)",
}


def reading_blocks(placed: Placed, product: Product, buyer: Buyer) -> tuple[Block, ...]:
    """A line for each receiver, then the uncertainty of the reading on the first with its causes."""
    received = placed.received
    items = [channel_words(receiver) for receiver in buyer.receivers]
    for reception in received.receptions:
        items.append(reception_words(reception))
        doubled = side_error(product, reception, buyer)
        if doubled is not None:
            items.append(doubled_words(doubled, reception.receiver))
    blocks: list[Block] = []
    if received.assumed:
        text = (
            "No receiver is stated, so the best case is shown: one that hears both protocols and shows all."
        )
        blocks.append(Paragraph(text, "quiet"))
    return (
        *blocks,
        Bullets(tuple(item for item in items if item)),
        Paragraph(trust_words(received.budget, received.reception.receiver)),
        *budget_blocks(received.budget),
    )


def channel_words(receiver: Receiver) -> str:
    """How many of its channels the rider's other sensors leave for power; nothing where they do not count."""
    if isinstance(receiver.channels, str) or not receiver.channels.kept:
        return ""
    budget = channel_budget(receiver.channels.total, receiver.channels.kept)
    short = f", and the sensors lack {budget.short_by} already" if budget.short_by else ""
    return (
        f"Of {budget.total} channels of {receiver.name}, {listed(budget.kept)} take {len(budget.kept)}; "
        f"free for power: {budget.free_channels}{short}."
    )


def other_reading_words(name: str, placed: Placed, product: Product, buyer: Buyer) -> tuple[str, ...]:
    """What another product shows on each receiver, with the error of a doubled side."""
    said = []
    for reception in placed.received.receptions:
        doubled = side_error(product, reception, buyer)
        error = f" {doubled_words(doubled, reception.receiver)}" if doubled is not None else ""
        said.append(f"{name}: {reception_words(reception)}{error}")
    return tuple(said)


def reception_words(reception: Reception) -> str:
    """What one receiver shows of it, over which protocol, from which firmware on, and what else arrives."""
    if reception.mode == "unknown":
        shows = (
            f"what it shows is unknown: at least {reception.at_least}, at most {reception.at_most}"
            if reception.at_least != reception.at_most
            else "what it shows is unknown"
        )
    else:
        shows = SHOWS[reception.mode]
    over = f" over {reception.protocol}" if reception.protocol else ""
    channels = "2 channels" if reception.channels_used == 2 else "1 channel"
    over += f" on {channels}" if reception.channels_used else ""
    firmware = f" from firmware {reception.firmware} on" if reception.firmware else ""
    said = f"On {reception.receiver}: {shows}{over}{firmware}"
    if reception.mode != "nothing":
        said += f"; balance {_one(reception.balance)}, stroke metrics {ARRIVES[reception.stroke_metrics]}"
    # of both sides the first reason is what has just been said
    reasons = reception.because[1:] if reception.mode == "both sides" else reception.because
    why = [reason for reason in reasons if not reason.endswith(f": {reception.mode}")]
    return f"{said} ({'; '.join(why)})." if why else f"{said}."


def _one(arrival: str) -> str:
    return {"arrives": "arrives", "does not arrive": "does not arrive"}.get(arrival, ARRIVES["unknown"])


def freed_words(each: Freed, names: Naming) -> str:
    """What a channel given up by the cadence sensor would change."""
    then = [f"show {each.then.mode}"] if each.then.mode != each.now.mode else []
    if each.then.balance == "arrives" != each.now.balance:
        then.append("receive balance")
    if each.then.stroke_metrics == "arrives" != each.now.stroke_metrics:
        then.append("receive stroke metrics")
    return (
        f"{names.product(each.product)}: pedals send cadence with the power. "
        f"With the cadence sensor's channel free, {each.now.receiver} would {listed(then)} "
        f"(now: {each.now.mode})."
    )
