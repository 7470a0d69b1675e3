"""Answers read again, in words."""

from datetime import date

import pytest

import worlds
from spindlewise.answer.answer_log import to_log
from spindlewise.answer.ranking import rank
from spindlewise.answer.recheck import Change, recheck
from spindlewise.render.as_text import as_text
from spindlewise.render.naming import Naming, naming
from spindlewise.render.words_recheck import change_words, recheck_blocks, reply_again

NAMES = Naming({"heron": "Shore Heron"}, {"weight": "Weight"})


def of(name, weight, spread=1.0):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight, spread),)})


def desk(heron=500, siskin=650, products=None):
    return worlds.desk(
        products or [of("heron", 330.0), of("siskin", 300.0)],
        [worlds.price("heron", heron), worlds.price("siskin", siskin)],
    )


def again(then, now, **buyer):
    entry = to_log(then, rank(then, worlds.buyer(**buyer)))
    return recheck(now, [entry])


def notice():
    return {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }


def said(then, now, **buyer):
    found = again(then, now, **buyer)
    return as_text(recheck_blocks(now.catalog, found, "2026-11-20"), 400)


def test_a_fall_that_takes_the_pick_comes_with_reason_and_reply():
    text = said(desk(), desk(siskin=450))

    assert "No longer holds. Invented Works Siskin: price was EUR 650.00, is EUR 450.00." in text
    assert (
        "To paste: We told you Invented Works Heron on 2026-11-20. Today we would say Invented Works Siskin "
        "at EUR 450.00." in text
    )
    assert text.rstrip().endswith("1 answer read again: 0 still good, 1 no longer.")


def test_what_still_holds_on_other_figures_is_listed():
    text = said(desk(), desk(siskin=640))

    assert "Still hold, on other figures" in text
    assert text.rstrip().endswith("1 answer read again: 1 still good, 0 no longer.")


def test_nothing_left_level_with_another_and_cannot_be_told():
    found = again(desk(), desk(heron=900, siskin=950), budget=700)[0]
    assert reply_again(found, naming(desk().catalog)).endswith("By now nothing meets all your needs.")

    was_none = again(desk(heron=900, siskin=950), desk(), budget=700)[0]
    assert reply_again(was_none, naming(desk().catalog)).startswith("We told you nothing on")

    loose = desk(products=[of("heron", 330.0, 9.0), of("siskin", 331.0, 9.0)], siskin=500)
    strict = desk(products=[of("heron", 330.0), of("siskin", 400.0)], siskin=500)
    changed = again(strict, loose)[0]
    assert "It is still the pick at EUR 500.00, level with Invented Works Siskin" in reply_again(
        changed, naming(loose.catalog)
    )
    doubled = (worlds.link("ANT+", "one side doubled", "absent"),)
    sided = worlds.desk(
        [worlds.product("heron", links=doubled, sides="left"), worlds.product("siskin")],
        [worlds.price("heron", 500), worlds.price("siskin", 600)],
    )
    private = {"balance_left_pct": {"low": 50.0, "high": 50.0}}
    text = said(sided, sided, riding=private, points={"price": 1, "reading_uncertainty": 1})
    assert "Cannot be told" in text
    assert "1 cannot be told." in text


def test_whoever_was_told_to_buy_what_is_now_under_a_notice_is_told_first_of_the_notice():
    noticed = worlds.product(
        "siskin", {"weight_g": (worlds.weighed(300.0, 1.0),)}, safety_notices=(notice(),)
    )
    then, now = desk(siskin=450), desk(siskin=450, products=[of("heron", 330.0), noticed])
    text = said(then, now)

    assert (
        "To paste: We told you Invented Works Siskin on 2026-11-20. Safety notice. Invented Works Siskin: "
        "May crack. Stop riding. (Issued 2026-05-01 by the maker.) Today we would say Invented Works Heron"
    ) in text
    assert "No longer holds. Invented Works Siskin: a safety notice stands now." in text


def test_the_notice_is_told_as_well_where_the_product_is_out_by_now():
    noticed = worlds.product(
        "siskin", {"weight_g": (worlds.weighed(300.0, 1.0),)}, safety_notices=(notice(),)
    )
    now = desk(siskin=450, products=[of("heron", 330.0), noticed])
    dear = desk(siskin=900, products=[of("heron", 330.0), noticed])

    assert "Safety notice. Invented Works Siskin: May crack." in said(desk(siskin=450), dear, budget=700)
    assert "lifted" not in said(now, dear, budget=700)


def test_many_reasons_are_cut_and_counted():
    then = worlds.desk(
        [of(f"p{i}", 330.0) for i in range(8)], [worlds.price(f"p{i}", 500 + i) for i in range(8)]
    )
    now = worlds.desk(
        [of(f"p{i}", 330.0) for i in range(8)], [worlds.price(f"p{i}", 600 - i) for i in range(8)]
    )

    assert " And 4 more." in said(then, now)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (Change("heron", "product", "in the catalog", "gone"), "Shore Heron is gone."),
        (
            Change("heron", "product", "not in the catalog", "in the catalog"),
            "Shore Heron is new in the catalog.",
        ),
        (Change("heron", "weight", "330", "334"), "Shore Heron: weight was 330, is 334."),
        (Change("heron", "price", "none", "334.00"), "Shore Heron: price was unknown, is EUR 334.00."),
        (
            Change("heron", "safety", "no safety notice", "under a safety notice"),
            "Shore Heron: a safety notice stands now.",
        ),
        (
            Change("heron", "safety", "under a safety notice", "no safety notice"),
            "Shore Heron: its safety notice was lifted.",
        ),
        (
            Change("heron", "needs", "meets all needs", "costs too much"),
            "Shore Heron: meets all needs then, costs too much now.",
        ),
    ],
)
def test_one_change(change, words):
    assert change_words(change, NAMES, "EUR") == words


def test_a_price_of_thousands_reads_as_everywhere_else():
    change = Change("heron", "price", "989.00", "1028.90")
    assert change_words(change, NAMES, "EUR") == "Shore Heron: price was EUR 989.00, is EUR 1,028.90."
    yen = Change("heron", "price", "none", "71700")
    assert change_words(yen, NAMES, "JPY") == "Shore Heron: price was unknown, is JPY 71,700."


def test_where_only_what_is_out_changed_that_is_the_reason_given():
    bulky = {"bolts": "two-bolt", "pattern": "Keel", "height_mm": 5.5}
    out = worlds.product("heron", {"weight_g": (worlds.weighed(330.0, 1.0),)}, cleat=bulky)
    products = [out, of("siskin", 300.0)]
    needs = {"shoes": {"bolts": "three-bolt"}}
    text = said(desk(heron=500, products=products), desk(heron=400, products=products), needs=needs)
    assert "What changed concerns only products that the needs keep out, then as now." in text
