from datetime import date, timedelta
from decimal import Decimal

import worlds
from small_answers import buyer, desk, names
from spindlewise.answer.price_change import at_price, price_change
from spindlewise.answer.price_record import price_record
from spindlewise.render.blocks import Paragraph, Table
from spindlewise.render.words_prices import change_blocks, history_blocks, pick_change_words, row_words


def changed(product: str, amount: str, name: str = "club-racer"):  # type: ignore[no-untyped-def]
    after = at_price(desk(), product, "EU", "EUR", Decimal(amount))
    return price_change(desk(), after, buyer(name), product)


def test_whether_the_pick_changes_is_said_in_one_line() -> None:
    lower = changed("tarnquell-liskar-duo", "500")
    assert pick_change_words(lower, names(), True) == (
        "The pick changes from Brellowick Ferrowen 2 to Tarnquell Liskar Duo."
    )
    assert pick_change_words(lower, names(), False).startswith("The pick would change from")
    same = changed("tarnquell-liskar-duo", "700")
    assert pick_change_words(same, names(), True) == "The pick stays the same: Brellowick Ferrowen 2."
    assert "would stay the same" in pick_change_words(same, names(), False)


def test_from_no_pick_to_one_and_back() -> None:
    found = changed("tarnquell-liskar-duo", "150", "nothing-for-it")
    assert pick_change_words(found, names(), True) == "Tarnquell Liskar Duo becomes the pick; there was none."
    assert "would become" in pick_change_words(found, names(), False)
    dear = changed("tarnquell-liskar-duo", "900", "nothing-for-it")
    assert pick_change_words(dear, names(), True) == "There is no pick, before or after."
    lone = worlds.desk([worlds.product("aa")], [worlds.price("aa", 500)])
    after = at_price(lone, "aa", "EU", "EUR", Decimal(900))
    gone = price_change(lone, after, worlds.buyer(budget=600), "aa")
    assert "is gone" in pick_change_words(gone, names(), True)
    assert "would be gone" in pick_change_words(gone, names(), False)


def test_the_table_shows_both_places_and_both_prices_of_what_changed_only() -> None:
    blocks = change_blocks(desk().catalog, changed("tarnquell-liskar-duo", "500"), "If", False)
    table = next(b for b in blocks if isinstance(b, Table))
    first, second = table.rows[:2]
    assert first[:4] == ("1", "2", "up", "Tarnquell Liskar Duo")
    assert first[-2:] == ("EUR 500.00", "EUR 619.00")
    assert second[-1] == ""
    assert isinstance(blocks[-1], Paragraph)


def test_a_product_that_comes_in_was_out() -> None:
    blocks = change_blocks(
        desk().catalog, changed("tarnquell-liskar-duo", "150", "nothing-for-it"), "If", False
    )
    table = next(b for b in blocks if isinstance(b, Table))
    assert table.rows[0][:3] == ("1", "out", "comes in")


def test_a_record_without_prices_says_so() -> None:
    _, text = history_blocks(desk().catalog, "tarnquell-liskar-duo", (), "2020-01-01")
    assert text == Paragraph("No price was seen by 2020-01-01.", "important")


def test_a_record_has_a_row_an_observation() -> None:
    lines = price_record(desk().catalog.prices, "tarnquell-liskar-duo", desk().day)
    table = next(
        b for b in history_blocks(desk().catalog, "tarnquell-liskar-duo", lines, "x") if isinstance(b, Table)
    )
    assert len(table.rows) == len(lines)


def test_a_long_record_shows_the_newest_and_those_in_force_unless_all_are_wanted() -> None:
    first = worlds.price("heron", 400, line=2, date=date(2025, 1, 1), seller="Tollhouse Spokes")
    start = date(2025, 2, 1)
    rows = [worlds.price("heron", 500 + n, line=3 + n, date=start + timedelta(days=n)) for n in range(42)]
    lines = price_record([first, *rows], "heron", worlds.DAY)
    assert [line.state for line in lines].count("in force") == 2

    blocks = history_blocks(desk().catalog, "tarnquell-liskar-duo", lines, "x", whole=False)
    table = next(b for b in blocks if isinstance(b, Table))
    assert [row[0] for row in table.rows] == ["2025-01-01", *(row.date.isoformat() for row in rows[2:])]
    told = [b.text for b in blocks if isinstance(b, Paragraph)]
    assert told[0] == "2 earlier prices are not shown: give --all to see the whole record."
    one_less = history_blocks(desk().catalog, "tarnquell-liskar-duo", lines[1:-1], "x", whole=False)
    assert "1 earlier price is not shown" in next(b.text for b in one_less if isinstance(b, Paragraph))

    blocks = history_blocks(desk().catalog, "tarnquell-liskar-duo", lines, "x", whole=True)
    assert len(next(b for b in blocks if isinstance(b, Table)).rows) == 43
    assert not any("not shown" in b.text for b in blocks if isinstance(b, Paragraph))


def test_one_price_in_a_sentence() -> None:
    row = worlds.price("tarnquell-liskar-duo", 559, valid_until=worlds.DAY)
    assert row_words(row, names()) == (
        "Tarnquell Liskar Duo, EU: EUR 559.00, tax in, street, Quayside Wheels, 2026-10-01, until 2026-11-20"
    )


def test_a_price_lifts_no_safety_notice() -> None:
    found = changed("yttervane-koldrane", "100")
    blocks = change_blocks(desk().catalog, found, "If", False)
    table = next(b for b in blocks if isinstance(b, Table))
    held = next(row for row in table.rows if row[3] == "Yttervane Koldrane")
    assert held[:3] == ("-", "-", "")
    cautions = [b.text for b in blocks if isinstance(b, Paragraph) and b.tone == "caution"]
    assert len(cautions) == 1
    assert cautions[0].startswith("Yttervane Koldrane: A batch of spindles may crack")
