"""What a product shows on each of the buyer's receivers, and how far that reading may be trusted."""

from spindlewise.answer.ranking import Placed
from spindlewise.answer.trust import side_error
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.product import Product
from spindlewise.reception.doubled_side import DoubledError
from spindlewise.reception.reading_mode import Reception
from spindlewise.render.blocks import Block, Bullets, Paragraph
from spindlewise.render.naming import listed, sentence
from spindlewise.units import percent_text, watts_text

SHOWS = {
    "both sides": "shows the power of both legs",
    "one side doubled": "shows one leg's power doubled",
    "one side only": "shows one leg's power only, half a reading",
    "nothing": "shows nothing",
}
ARRIVES = {
    "arrives": "arrive",
    "does not arrive": "do not arrive",
    "unknown": "may or may not arrive, nobody says",
}


def reading_blocks(placed: Placed, product: Product, buyer: Buyer) -> tuple[Block, ...]:
    """A line for each receiver, then the uncertainty of the reading on the first."""
    received = placed.received
    items = []
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
    return (*blocks, Bullets(tuple(items)), Paragraph(trust_words(placed)))


def other_reading_words(name: str, placed: Placed, product: Product, buyer: Buyer) -> str:
    """What another product shows on the first receiver, with the error of a doubled side."""
    reception = placed.received.reception
    doubled = side_error(product, reception, buyer)
    error = f" {doubled_words(doubled, reception.receiver)}" if doubled is not None else ""
    return f"{name}: {reception_words(reception)}{error}"


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
    firmware = f" from firmware {reception.firmware} on" if reception.firmware else ""
    said = f"On {reception.receiver}: {shows}{over}{firmware}"
    if reception.mode == "both sides":
        said += f"; balance {_one(reception.balance)}, stroke metrics {ARRIVES[reception.stroke_metrics]}"
    elif reception.because:
        said += f" ({'; '.join(reception.because)})"
    return f"{said}."


def _one(arrival: str) -> str:
    return {"arrives": "arrives", "does not arrive": "does not arrive"}.get(arrival, ARRIVES["unknown"])


def doubled_words(found: DoubledError, receiver: str) -> str:
    """By how much a doubled side reads wrong, in percent and, where threshold power is stated, in watts."""
    whose = (
        "at your own balance"
        if found.basis == "buyer"
        else "for 19 riders of 20, since your balance is unknown"
    )
    said = f"Doubling one leg {found.sign} there: {percent_text(found.low_pct, signed=True)}"
    if found.high_pct != found.low_pct:
        said += f" to {percent_text(found.high_pct, signed=True)}"
    said += f" {whose}"
    if found.low_w is not None and found.high_w is not None:
        ends = [watts_text(found.low_w, signed=True)]
        if found.high_w != found.low_w:
            ends.append(watts_text(found.high_w, signed=True))
        said += f", which is {' to '.join(ends)} at your threshold power"
    return f"{said} ({receiver})."


def trust_words(placed: Placed) -> str:
    """How far the power shown may stray, what does most of it, and what the figure leaves out."""
    budget = placed.received.budget
    if budget.expanded_pct is None:
        lacking = f"not known: {listed(budget.missing)}" if budget.missing else budget.note
        return f"How far the power shown may stray cannot be said; {lacking}."
    within = percent_text(budget.expanded_pct)
    said = f"The power shown stays within {within} of the truth in about 19 cases of 20"
    said += f"; {budget.largest} does most of it" if budget.largest else ""
    if budget.left_out:
        said += f"; not in this figure, since nothing is known of it: {listed(budget.left_out)}"
    return sentence(said)
