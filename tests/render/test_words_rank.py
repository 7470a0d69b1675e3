from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

import worlds
from small_answers import desk, names, reply
from spindlewise.answer.break_evens import break_evens
from spindlewise.answer.ranking import rank
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.render.blocks import Bullets, Heading, Paragraph, Table
from spindlewise.render.naming import naming
from spindlewise.render.words_rank import (
    excluded_sentences,
    first_at_words,
    notice_of_invention,
    pick_words,
    rank_blocks,
    rank_table,
    told_places,
)


def test_the_table_has_a_row_a_candidate_and_what_each_counts_by() -> None:
    ranking = reply().ranking
    table = rank_table(ranking, ranking.placed, names(), break_evens(desk(), ranking))
    assert [row[1] for row in table.rows] == [names().product(p.product) for p in ranking.placed]
    assert table.rows[0][5] == "stands first"
    assert [c.title for c in table.columns][6:] == ["Weight", "Reading within", "Runs", "Shows"]


def test_prices_at_which_one_would_be_first() -> None:
    assert first_at_words(BreakEven(Outcome.AT_PRICE, 1, Decimal("0.01")), "EUR") == "EUR 0.01"
    words = [
        first_at_words(BreakEven(o), "EUR") for o in (Outcome.ANY_PRICE, Outcome.HELD_BACK, Outcome.NO_PRICE)
    ]
    assert words == ["any price", "held back", "no price"]


def test_plain_pedals_share_a_line() -> None:
    said = excluded_sentences(reply().ranking, names())
    assert said[-1] == "Lommerside Lethery: it is a plain pedal."
    assert len([s for s in said if "plain pedal" in s]) == 1


def of(name: str, weight: float, spread: float = 1.0, tried: bool = True) -> Any:
    seen = {**(worlds.TRIED if tried else {}), "weight_g": (worlds.weighed(weight, spread),)}
    return worlds.product(name, seen)


def ranked(*products: Any, **buyer: Any) -> tuple[Any, Any]:
    desk = worlds.desk(products, [worlds.price(p.id, 500) for p in products])
    return desk, rank(desk, worlds.buyer(**buyer))


def test_the_pick_names_whom_it_is_level_with() -> None:
    desk, ranking = ranked(of("heron", 330, 10), of("siskin", 331, 10), of("auk", 310, tried=False))
    assert pick_words(ranking, naming(desk.catalog)) == (
        "Pick: Invented Works Heron at EUR 500.00, level with Invented Works Siskin; "
        "level only by what is not known: Invented Works Auk."
    )


def test_without_a_pick_the_reason_is_said() -> None:
    first = reply().ranking.placed[0]

    class Held:
        pick, placed = None, (first,)

    assert "held back by a safety notice" in pick_words(Held(), names())  # type: ignore[arg-type]
    assert pick_words(reply("nothing-for-it").ranking, names()) == (
        "No pick: nothing in the catalog meets all the needs."
    )


def test_a_need_that_could_not_be_checked_is_said_behind_the_pick() -> None:
    silent = worlds.product("heron", {**worlds.TRIED, "ingress": "unknown"})
    desk, ranking = ranked(silent, needs={"water": "IPX5"})
    assert pick_words(ranking, naming(desk.catalog)).endswith(
        "Not checked, since nobody knows: IPX5: ingress code unknown. Ask before you buy."
    )


def test_explained_places_follow_the_table_and_the_pick_comes_last() -> None:
    blocks = rank_blocks(desk().catalog, reply().ranking, explain=True)
    kinds = [type(block) for block in blocks]
    assert kinds.index(Table) < kinds.index(Bullets)
    assert isinstance(blocks[-2], Paragraph)
    assert blocks[-2].text.startswith("Pick: ")


def test_invention_is_told_where_there_is_any() -> None:
    catalog = desk().catalog
    assert len(notice_of_invention(catalog)) == 1
    real = replace(catalog, settings=catalog.settings.model_copy(update={"invented": "no"}))
    assert notice_of_invention(real) == ()


NOTICE = {
    "date": date(2026, 9, 1),
    "issued_by": "maker",
    "what": "may crack",
    "action": "Stop riding.",
    "ended": "none",
}


def many(count: int, held: int, dear: int) -> tuple[Any, Any]:
    """So many candidates in order of weight, 8 g apart; the last of them held back; and so many too dear."""
    ids = [f"pedal-{number:02}" for number in range(count + dear)]
    light = [worlds.weighed(300.0 + 8 * number, 1.0) for number in range(len(ids))]
    products = [
        worlds.product(
            name,
            {**worlds.TRIED, "weight_g": (weight,)},
            **({"safety_notices": (NOTICE,)} if count - held <= number < count else {}),
        )
        for number, (name, weight) in enumerate(zip(ids, light, strict=True))
    ]
    prices = [worlds.price(name, 500 if number < count else 5000) for number, name in enumerate(ids)]
    desk = worlds.desk(products, prices)
    return desk, rank(desk, worlds.buyer(budget=900))


def shown(desk: Any, ranking: Any, **more: Any) -> tuple[list[str], list[str], tuple[str, ...]]:
    """Products of the table, what is said of those left out, and the bullets of who is out."""
    blocks = rank_blocks(desk.catalog, ranking, **more)
    table = next(block for block in blocks if isinstance(block, Table))
    left = [b.text for b in blocks if isinstance(b, Paragraph) and "not shown" in b.text]
    out = next((block.items for block in blocks if isinstance(block, Bullets)), ())
    return [row[1] for row in table.rows], left, out


def test_a_screen_shows_the_first_twenty_and_all_that_is_held_back_and_counts_the_rest() -> None:
    desk, ranking = many(30, 2, 25)
    placed = [naming(desk.catalog).product(each.product) for each in ranking.placed]
    table, left, out = shown(desk, ranking, whole=False)
    assert table == [*placed[:20], *placed[-2:]]
    assert left == [
        "8 further places are not shown: give --all to see every one.",
        "5 more are not shown: give --all to see every one.",
    ]
    assert len(out) == 20
    cautions = [
        b for b in rank_blocks(desk.catalog, ranking, whole=False) if getattr(b, "tone", "") == "caution"
    ]
    assert len(cautions) == 2
    table, left, out = shown(desk, ranking)
    assert (table, left, len(out)) == (placed, [], 25)


def test_one_place_more_and_one_product_more_that_is_out() -> None:
    desk, ranking = many(21, 0, 21)
    table, left, out = shown(desk, ranking, whole=False)
    assert len(table) == 20
    assert left == ["1 further place is not shown: give --all to see every one."]
    assert len(out) == 21


def test_all_that_are_level_with_the_first_are_shown() -> None:
    names = [f"pedal-{number:02}" for number in range(26)]
    desk, ranking = ranked(*(of(name, 330, 10) for name in names))
    assert len(shown(desk, ranking, whole=False)[0]) == 26
    assert told_places(ranking) == ranking.placed


def test_nothing_placed_shows_nothing() -> None:
    desk, ranking = many(0, 0, 2)
    assert told_places(ranking) == ()
    assert "No pick: nothing in the catalog" in str(rank_blocks(desk.catalog, ranking, whole=False))


def test_reasons_are_given_for_the_places_that_are_shown() -> None:
    desk, ranking = many(23, 1, 0)
    blocks = rank_blocks(desk.catalog, ranking, explain=True, whole=False)
    headings = [b.text for b in blocks if isinstance(b, Heading) and b.level == 3]
    assert len(headings) == 21
    assert headings[-1].startswith("Held back: ")
