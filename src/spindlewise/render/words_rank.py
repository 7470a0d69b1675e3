"""The ranking as a table, with who is out and why, and the pick as the last word."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.level_reasons import LevelReasons, level_reasons
from spindlewise.answer.ranking import Excluded, Placed, Ranking
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.naming import Naming, listed, listed_most, naming, sentence, share_text
from spindlewise.render.words_figures import KEY, full_words, graded_words, paid_words
from spindlewise.render.words_notices import notice_blocks
from spindlewise.render.words_why import (
    LEVEL,
    SAME_SCORE,
    TAKE,
    behind_words,
    difference_words,
    level_sentences,
    place_words,
    score_words,
)
from spindlewise.units import money_text, points_text

if TYPE_CHECKING:
    from spindlewise.answer.could_lead import CouldLead

SHORT = {
    "weight": "Weight",
    "reading_uncertainty": "Reading within",
    "running_time": "Runs",
    "warranty": "Warranty",
    "stack": "Stack",
    "detail": "Shows",
    "ownership": "To own",
}
MOST_PLACES, MOST_OUT = 20, 20
"""On a screen, unless all are asked for. Design choice, no source: nobody compares more at once."""
HELD_BACK = "- is held back by a safety notice and cannot come first."
SPARE = {"weight": 2, "ownership": 3, "reading_uncertainty": 4, "detail": 6, "running_time": 7, "warranty": 8}


def rank_blocks(
    catalog: Catalog,
    ranking: Ranking,
    even: BreakEvens | None = None,
    explain: bool = False,
    leads: "Sequence[CouldLead]" = (),
    whole: bool = True,
) -> tuple[Block, ...]:
    """The whole ranking; `explain` adds the reasons for each place, from the figures to the points.

    `leads` says of each candidate whether any weights at all would put it first. Unless it is to be `whole`,
    places that nobody reads on a screen are left out and counted: see `told_places`.
    """
    names = naming(catalog)
    blocks: list[Block] = [
        Heading(f"Ranking for {ranking.buyer.name}", 1),
        Paragraph(frame_words(ranking.buyer, ranking), "quiet"),
        Paragraph(weights_words(ranking, names), "quiet"),
    ]
    told = ranking.placed if whole else told_places(ranking)
    if told:
        blocks.append(rank_table(ranking, told, names, even))
        blocks += _left_out(len(ranking.order) - len(told), "further place is", "further places are")
        blocks += _marks(told)
    # what is ridden today is told of too, whether or not it was asked for
    noticed = [ranking.buyer.present_pedals, *(each.product for each in told if each.held_back)]
    blocks += notice_blocks(catalog, dict.fromkeys(noticed), ranking.day, names)
    if explain:
        level = LevelReasons(ranking)
        blocks += [
            block
            for placed in told
            for block in _explained(placed, ranking, names, catalog, _lead(placed, leads), level)
        ]
    if ranking.excluded:
        blocks.append(Heading("Out, and why"))
        said = excluded_sentences(ranking, names)
        # one more than may be told is told as well: to count it would take as long a line
        most = len(said) if whole or len(said) <= MOST_OUT + 1 else MOST_OUT
        blocks.append(Bullets(said[:most]))
        blocks += _left_out(len(said) - most, "more is", "more are")
    return (*blocks, Paragraph(pick_words(ranking, names), "important"), *notice_of_invention(catalog))


def told_places(ranking: Ranking) -> tuple[Placed, ...]:
    """The places that a screen shows: the first MOST_PLACES, all that are level with the first, and all that
    a safety notice holds back.
    """
    if not len(ranking.order):
        return ()
    level = frozenset(ranking.place_at(0).level_with)
    told = [
        position
        for position, row in enumerate(ranking.order.tolist())
        if position < MOST_PLACES or ranking.held_back[row] or ranking.table.products[row] in level
    ]
    # the others' stories are not made
    return tuple(ranking.place_at(position) for position in told)


def _left_out(count: int, one: str, several: str) -> list[Block]:
    if not count:
        return []
    said = f"{count:,} {one if count == 1 else several} not shown: give --all to see every one."
    return [Paragraph(said, "quiet")]


def frame_words(buyer: Buyer, ranking: Ranking) -> str:
    """Day, region, money and receiver: what the answer holds for."""
    budget = "no limit" if buyer.budget_amount is None else money_text(buyer.budget_amount, buyer.currency)
    heard = buyer.receivers[0].name if buyer.receivers else "none stated, so the best case counts"
    return (
        f"As of {ranking.day.isoformat()}. Region {buyer.region}, currency {buyer.currency}, "
        f"budget {budget}. Receiver: {heard}."
    )


def weights_words(ranking: Ranking, names: Naming) -> str:
    """What counts how much."""
    parts = [
        f"{names.criterion(name)} {share_text(share)}" for name, share in ranking.weighed.by_name.items()
    ]
    return f"What counts: {listed(parts)}."


def rank_table(
    ranking: Ranking, told: Sequence[Placed], names: Naming, even: BreakEvens | None = None
) -> Table:
    """These places of the ranking; where room is short, the less weighty columns give way."""
    shown = [name for name in ranking.table.criteria if name != "price"]
    columns = [
        Column("Place", "right"),
        Column("Product"),
        Column("Score", "right"),
        Column("Range", "right", spare=1),
        Column("Price", "right"),
    ]
    if even is not None:
        columns.append(Column("First at", "right", spare=5))
    columns += [Column(SHORT[name], spare=SPARE.get(name, 9)) for name in shown]
    rows = []
    for placed in told:
        cells = [
            place_words(placed),
            names.product(placed.product),
            points_text(placed.score.expected),
            f"{points_text(placed.score.low)} to {points_text(placed.score.high)}",
            money_text(placed.paid.amount, placed.paid.currency),
        ]
        if even is not None:
            found = even.against_leader.get(placed.product)
            cells.append(first_at_words(found, ranking.buyer.currency) if found else "stands first")
        cells += [graded_words(placed.standings[name]) for name in shown]
        rows.append(tuple(cells))
    return Table("", tuple(columns), tuple(rows))


def first_at_words(found: BreakEven, currency: str) -> str:
    """At which price a product would score as much as the first, in a table's cell."""
    if found.outcome is Outcome.AT_PRICE and found.amount is not None:
        return money_text(found.amount, currency)
    return {Outcome.ANY_PRICE: "any price", Outcome.HELD_BACK: "held back"}.get(found.outcome, "no price")


def place_marks(told: Sequence[Placed]) -> str:
    """What a range of places and a dash in place of one mean; empty where the table has neither."""
    said = []
    if any(placed.level_with and not placed.held_back for placed in told):
        said.append(f"A place such as 2 to 4 is shared by products that are level: {LEVEL}.")
    if any(placed.held_back for placed in told):
        said.append(HELD_BACK)
    return " ".join(said)


def _marks(told: Sequence[Placed]) -> list[Block]:
    said = [place_marks(told)] if place_marks(told) else []
    if any(placed.level_with for placed in told):
        said.append(f"{TAKE} `rank --explain` names them. An unknown figure counts at its low end.")
    said.append("Scores run from 0 to 100 on scales that do not depend on who else is in the table.")
    return [Paragraph(" ".join(said), "quiet")]


def _lead(placed: Placed, leads: "Sequence[CouldLead]") -> "CouldLead | None":
    return next((lead for lead in leads if lead.product == placed.product), None)


def lead_words(lead: "CouldLead", names: Naming) -> str:
    """Whether any weights would put it first, and which do so by most."""
    if lead.shares is None:
        return "No weights at all would put it first."
    parts = [
        f"{names.criterion(name)} {share_text(share)}"
        for name, share in lead.shares.items()
        if share > 0.0005
    ]
    return f"Weights under which it leads by most: {listed(parts)}."


def _explained(
    placed: Placed,
    ranking: Ranking,
    names: Naming,
    catalog: Catalog,
    lead: "CouldLead | None",
    level: LevelReasons,
) -> list[Block]:
    items = [f"Score {score_words(placed)}."]
    first = ranking.place_at(0)
    if placed.product != first.product:
        found = ranking.against(placed.product, first.product)
        beside = behind_words(found)
        beside = f"{beside} as" if beside == SAME_SCORE else beside
        items.append(sentence(f"{beside} {names.product(first.product)}: {difference_words(found, names)}"))
    items += level_sentences(level.of(placed), names, explained=False)
    if placed.held_back:
        items.append("Held back by the safety notice above.")
    items.append(f"Price: {paid_words(placed.paid, catalog.settings.price_age_days)}.")
    items += [
        f"{names.title(name)}: {full_words(placed.standings[name])}."
        for name in ranking.table.criteria
        if name != "price"
    ]
    if lead is not None and not placed.held_back:
        items.append(lead_words(lead, names))
    items += [f"Not checked: {unchecked}." for unchecked in placed.unchecked]
    place = "Held back" if placed.held_back else f"Place {place_words(placed)}"
    return [Heading(f"{place}: {names.product(placed.product)}", 3), Bullets(tuple(items))]


def excluded_sentences(ranking: Ranking, names: Naming) -> tuple[str, ...]:
    """A sentence for each product that is out; those of a kind that was not asked for share one."""
    other_kind: dict[str, list[str]] = {}
    said = []
    for out in ranking.excluded:
        kinds = [failure.because for failure in out.because if failure.need == "kind"]
        if kinds:
            other_kind.setdefault(kinds[0], []).append(names.product(out.product))
        else:
            said.append(excluded_words(out, names))
    grouped = [
        f"{listed(out)}: {kind if len(out) == 1 else kind.replace('it is a ', 'each is a ')}."
        for kind, out in other_kind.items()
    ]
    return (*said, *grouped)


def excluded_words(out: Excluded, names: Naming) -> str:
    """One product that is out, with every need that it fails."""
    return f"{names.product(out.product)}: {'; '.join(failure.because for failure in out.because)}."


def pick_words(ranking: Ranking, names: Naming) -> str:
    """The pick, and whom it is level with; or why there is none."""
    pick = ranking.pick
    if pick is None:
        if ranking.placed:
            return "No pick: everything that no need keeps out is held back by a safety notice."
        return "No pick: nothing in the catalog meets all the needs."
    reasons = level_reasons(ranking, pick)
    price = money_text(pick.paid.amount, pick.paid.currency)
    said = f"Pick: {names.product(pick.product)} at {price}"
    known = listed_most(names.product(each.product) for each in reasons if not each.only_by)
    unknown = listed_most(names.product(each.product) for each in reasons if each.only_by)
    said += f", level with {known}" if known else ""
    said += f"; level only by what is not known: {unknown}" if unknown else ""
    return f"{said}.{unchecked_words(pick)}"


def unchecked_words(pick: Placed) -> str:
    """The needs that could not be checked, as a caution behind the pick; empty where all could."""
    if not pick.unchecked:
        return ""
    return f" Not checked, since nobody knows: {listed(pick.unchecked)}. Ask before you buy."


def notice_of_invention(catalog: Catalog) -> tuple[Block, ...]:
    """The catalog's own notice that its products are invented, where they are."""
    invented = catalog.settings.invented
    return () if invented == "no" else (Paragraph(invented, "quiet"),)


def grades_key() -> Paragraph:
    """What the grades mean."""
    return Paragraph(KEY, "quiet")
