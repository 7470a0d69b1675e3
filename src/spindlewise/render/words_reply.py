"""The whole reply to one buyer, section by section, ready for any medium."""

from dataclasses import replace

from spindlewise.answer.level_reasons import level_reasons
from spindlewise.answer.promised import seen
from spindlewise.answer.ranking import Placed
from spindlewise.answer.reply import Reply
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import Disclosure, SafetyNotice
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph, Section, blocks_of
from spindlewise.render.fragment import page_link
from spindlewise.render.naming import Naming, listed, naming, sentence
from spindlewise.render.words_extras import (
    crank_left_words,
    crank_words,
    gram_price,
    gram_sentence,
    promise_sentences,
    trade_sentences,
)
from spindlewise.render.words_figures import full_words, paid_words
from spindlewise.render.words_ladder import ladder_sentences, pick_sentence
from spindlewise.render.words_offer import offer_words
from spindlewise.render.words_outlook import near_miss_words, outlook_sentences
from spindlewise.render.words_owning import owning_blocks
from spindlewise.render.words_rank import (
    frame_words,
    grades_key,
    notice_of_invention,
    place_marks,
    rank_table,
    unchecked_words,
    weights_words,
)
from spindlewise.render.words_reading import freed_words, other_reading_words, reading_blocks
from spindlewise.render.words_sureness import doubt_sentences, sureness_sentences
from spindlewise.render.words_swap import swap_sentences
from spindlewise.render.words_why import behind_words, difference_words, level_sentences, score_words
from spindlewise.units import points_text

COMMISSIONS = {
    "none": "nobody is paid for this",
    "link pays a commission": "a link to it pays a commission",
    "maker pays for a video": "the maker pays for a video about it",
    "unknown": "whether anybody is paid for it is unknown",
}


def reply_blocks(catalog: Catalog, reply: Reply) -> tuple[Block, ...]:
    """The reply as one run of blocks."""
    return blocks_of(reply_sections(catalog, reply))


def reply_sections(catalog: Catalog, reply: Reply) -> tuple[Section, ...]:
    """The reply by sections; those marked `keep` stay in however short a reply is made."""
    names = naming(catalog)
    found = (
        Section("question", _question(reply), keep=True),
        Section("pick", _pick(reply, names, catalog), keep=True),
        Section("notices", _notices(reply, names), keep=True),
        Section("why", _why(reply, names)),
        Section("how_sure", _how_sure(reply, names)),
        Section("near_misses", _near_misses(reply, names)),
        Section("reading", _reading(reply, catalog)),
        Section("figures", _figures(reply, names)),
        Section("swap", _swap(reply, names)),
        Section("cost_per_gram", _cost_per_gram(reply, names)),
        Section("owning", owning_blocks(catalog, reply)),
        Section("what_would_change", _outlook(reply, names)),
        Section("question_itself", _question_itself(reply, names)),
        Section("unknowns", _unknowns(reply, names)),
        Section("disclosure", _disclosures(reply, names), keep=True),
        Section("cautions", _cautions(reply), keep=True),
        Section("grades", (grades_key(),) if reply.pick else ()),
        Section("invented", notice_of_invention(catalog), keep=True),
        Section("weigh", _weigh(catalog, reply)),
    )
    return tuple(section for section in found if section.blocks)


def _question(reply: Reply) -> tuple[Block, ...]:
    ranking = reply.ranking
    return (
        Heading(ranking.buyer.question, 1),
        Paragraph(f"For {ranking.buyer.name}. {frame_words(ranking.buyer, ranking)}", "quiet"),
    )


def _pick(reply: Reply, names: Naming, catalog: Catalog) -> tuple[Block, ...]:
    pick = reply.pick
    if pick is None:
        return (Paragraph(f"No recommendation: {reply.nothing_because}.", "important"),)
    blocks: list[Block] = [
        Paragraph(f"Our pick: {names.product(pick.product)}.", "important"),
        Paragraph(" ".join(_price(reply, pick, catalog))),
        Paragraph(f"Score: {score_words(pick)}. {weights_words(reply.ranking, names)}"),
    ]
    if pick.unchecked:
        blocks.append(Paragraph(unchecked_words(pick).strip(), "caution"))
    blocks += [Paragraph(said) for said in level_sentences(level_reasons(reply.ranking, pick), names)]
    return tuple(blocks)


def _price(reply: Reply, pick: Placed, catalog: Catalog) -> list[str]:
    said = [f"Price: {paid_words(pick.paid, catalog.settings.price_age_days)}."]
    if reply.offer_end is not None:
        said.append(offer_words(reply.offer_end, reply.break_evens, reply.ranking.buyer.budget_amount))
    return said


def _notices(reply: Reply, names: Naming) -> tuple[Block, ...]:
    if not reply.notices:
        return ()
    return (
        Heading("Safety notices"),
        *(Paragraph(notice_words(names.product(name), notice), "caution") for name, notice in reply.notices),
    )


def notice_words(product: str, notice: SafetyNotice) -> str:
    """A safety notice: what is wrong and what whoever rides it should do."""
    return (
        f"{product}: {sentence(notice.what)} {sentence(notice.action)} "
        f"(Issued {notice.date.isoformat()} by {notice.issued_by}.)"
    )


def _why(reply: Reply, names: Naming) -> tuple[Block, ...]:
    pick = reply.pick
    if pick is None or not reply.followers:
        return ()
    items = []
    unknown = {each.product for each in level_reasons(reply.ranking, pick) if each.only_by}
    for follower in reply.followers:
        placed, found = follower.placed, follower.against_pick
        level = behind_words(found)
        if placed.product in unknown:
            level += ", but level by what is not known"
        elif placed.product in pick.level_with:
            level = "level with the pick"
        held = ", held back by a safety notice" if placed.held_back else ""
        points = points_text(placed.score.expected)
        items.append(
            f"{names.product(placed.product)} ({points}, {level}{held}): {difference_words(found, names)}."
        )
    return (
        Heading("Why not one of the others"),
        Paragraph("In points of the score, against the pick:"),
        Bullets(tuple(items)),
    )


def _how_sure(reply: Reply, names: Naming) -> tuple[Block, ...]:
    said = sureness_sentences(reply, names)
    return (Heading("How sure this is"), Bullets(said)) if said else ()


def _question_itself(reply: Reply, names: Naming) -> tuple[Block, ...]:
    weights, odd = trade_sentences(reply, names), doubt_sentences(reply, names)
    blocks: list[Block] = []
    if weights and reply.pick is not None:
        blocks += [Heading("What your weights trade"), Bullets(weights)]
    if odd:
        blocks += [Heading("About the question itself"), Bullets(odd)]
    return tuple(blocks)


def _near_misses(reply: Reply, names: Naming) -> tuple[Block, ...]:
    if not reply.near_misses:
        return ()
    led = reply.pick is not None
    return (
        Heading("Near misses: out for one reason only"),
        Bullets(tuple(near_miss_words(miss, names, led) for miss in reply.near_misses)),
    )


def _reading(reply: Reply, catalog: Catalog) -> tuple[Block, ...]:
    if reply.pick is None:
        return ()
    product = catalog.products[reply.pick.product]
    blocks: list[Block] = [
        Heading("What you will see"),
        *reading_blocks(reply.pick, product, reply.ranking.buyer),
    ]
    alike, others = _other_readings(reply, catalog)
    if alike:
        blocks.append(Paragraph(f"{listed(alike)} {'shows' if len(alike) == 1 else 'show'} the same."))
    if others:
        blocks += [Paragraph("What the others show, where it differs:"), Bullets(others)]
    if reply.freed:
        blocks.append(Bullets(tuple(freed_words(each, naming(catalog)) for each in reply.freed)))
    if reply.crank is not None:
        left = crank_left_words(reply.crank_left, reply.pick.received.budget)
        blocks.append(Paragraph(f"{crank_words(reply.crank)} {left}".rstrip(), "important"))
    promises = promise_sentences(reply, naming(catalog))
    if promises:
        blocks += [Paragraph("Promised, and counted as absent:"), Bullets(promises)]
    return tuple(blocks)


def _other_readings(reply: Reply, catalog: Catalog) -> tuple[list[str], tuple[str, ...]]:
    """Names of those behind the pick that show the same on every receiver; and what the others show."""
    names, alike, others = naming(catalog), list[str](), list[str]()
    for placed in [follower.placed for follower in reply.followers]:
        name = names.product(placed.product)
        if reply.pick is not None and _arrives(placed) == _arrives(reply.pick):
            alike.append(name)
        else:
            product = catalog.products[placed.product]
            others += other_reading_words(name, placed, product, reply.ranking.buyer)
    return alike, tuple(others)


def _arrives(placed: Placed) -> list[tuple[str, ...]]:
    return [seen(reception) for reception in placed.received.receptions]


def _figures(reply: Reply, names: Naming) -> tuple[Block, ...]:
    pick = reply.pick
    if pick is None:
        return ()
    told = [pick, *(follower.placed for follower in reply.followers)]
    shown = [name for name in reply.ranking.table.criteria if name != "price"]
    if not shown:
        return ()
    items = tuple(f"{names.title(name)}: {full_words(pick.standings[name])}." for name in shown)
    blocks: tuple[Block, ...] = (Heading("The figures behind it"), Bullets(items))
    if len(told) < 2:
        return blocks
    table = replace(rank_table(reply.ranking, told, names), caption="Beside the others")
    marks = place_marks(told)
    return (*blocks, table, *((Paragraph(marks, "quiet"),) if marks else ()))


def _swap(reply: Reply, names: Naming) -> tuple[Block, ...]:
    if reply.swap is None:
        return ()
    old = names.product(reply.swap.old.id)
    return (
        Heading("What changes on your bike"),
        Paragraph(f"Compared with your present pedals, {old}:"),
        Bullets(swap_sentences(reply.swap, names)),
    )


def _cost_per_gram(reply: Reply, names: Naming) -> tuple[Block, ...]:
    if reply.pick is None:
        return ()
    head = Heading("What each gram saved costs")
    if reply.climb is None:
        return (head, Paragraph(f"Cannot be said: {reply.climb_missing}."))
    own = pick_sentence(reply.pick.product, reply.climb, names)
    steps = ladder_sentences(reply.climb, names)
    start = names.product(reply.climb.baseline)
    blocks = (head, Paragraph(f"Against your {start}:"), Bullets((*([own] if own else []), *steps)))
    seconds = gram_sentence(reply.gram_worth, gram_price(reply))
    return (*blocks, Paragraph(seconds)) if seconds else blocks


def _outlook(reply: Reply, names: Naming) -> tuple[Block, ...]:
    said = outlook_sentences(reply, names)
    return (Heading("What would change this"), Bullets(said)) if said else ()


def _unknowns(reply: Reply, names: Naming) -> tuple[Block, ...]:
    if not reply.unknowns:
        return ()
    items = []
    for product, criterion, why in reply.unknowns:
        what = "not checked" if criterion == "need" else names.criterion(criterion)
        items.append(f"{names.product(product)}: {what}, {why}.")
    return (
        Heading("What nobody knows"),
        Bullets(tuple(items)),
        Paragraph("An unknown figure counts at the low end of what is plausible.", "quiet"),
    )


def _disclosures(reply: Reply, names: Naming) -> tuple[Block, ...]:
    if not reply.disclosures:
        return ()
    items = tuple(disclosure_words(names.product(name), found) for name, found in reply.disclosures)
    return (Heading("Disclosure"), Bullets(items), Paragraph("None of this moves a place.", "quiet"))


def disclosure_words(product: str, found: Disclosure) -> str:
    """How the tested unit came here, what became of it, and who is paid."""
    unit = "no unit was tested" if found.unit == "none tested" else f"the tested unit was {found.unit}"
    after = "" if found.returned == "not applicable" else {"kept": "kept"}.get(found.returned, found.returned)
    parts = [part for part in (unit, after) if part]
    return f"{product}: {listed(parts)}; {COMMISSIONS[found.commission]} ({found.source})."


def _weigh(catalog: Catalog, reply: Reply) -> tuple[Block, ...]:
    """Where the site lets anybody turn this very question; nothing of body or health is in the address."""
    link = page_link(catalog, reply.ranking.buyer)
    return (Paragraph(f"Weigh it yourself: {link}", "quiet"),) if link else ()


def _cautions(reply: Reply) -> tuple[Block, ...]:
    said = reply.swap.cautions if reply.swap else reply.cautions
    return (Heading("Before you ride"), Bullets(said)) if said else ()
