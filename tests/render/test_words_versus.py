"""Two products side by side, in words."""

from datetime import date
from itertools import pairwise

import worlds
from spindlewise.answer.versus import versus
from spindlewise.render.blocks import Bullets, Heading, Table
from spindlewise.render.naming import naming
from spindlewise.render.words_versus import verdict_words, versus_blocks

NOTICE = {
    "date": date(2026, 5, 1),
    "ended": "none",
    "what": "May crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def compared(heron=330.0, siskin=300.0, spread=1.0, siskin_changes=None, **buyer):
    products = [
        worlds.product("heron", {**worlds.TRIED, "weight_g": (worlds.weighed(heron, spread),)}),
        worlds.product(
            "siskin",
            {**worlds.TRIED, "weight_g": (worlds.weighed(siskin, spread),)},
            **(siskin_changes or {}),
        ),
    ]
    prices = [worlds.price("heron", 500), worlds.price("siskin", 500)]
    desk = worlds.desk(products, prices)
    return desk, versus(desk, worlds.buyer(**buyer), "heron", "siskin")


def verdict(**changes):
    desk, found = compared(**changes)
    return verdict_words(found, naming(desk.catalog))


def test_who_leads_by_how_much_and_where_each_gains():
    assert verdict() == (
        "Invented Works Siskin leads by 5.3 points. Invented Works Heron loses 5.3 points on weight."
    )
    assert verdict(heron=300.0, siskin=330.0) == (
        "Invented Works Heron leads by 5.3 points. It gains 5.3 points on weight."
    )


def test_level_is_said_as_level():
    assert verdict(heron=331.0, siskin=330.0, spread=9.0).startswith("Level: ")


def test_a_leader_under_a_notice_is_said_to_be_held_back():
    assert "leads by 5.3 points, but a safety notice holds it back." in verdict(
        siskin_changes={"safety_notices": (NOTICE,)}
    )


def test_nothing_is_said_to_score_no_less_because_the_other_is_held_back():
    desk, found = compared(siskin_changes={"safety_notices": (NOTICE,)})
    said = next(
        after.items
        for block, after in pairwise(versus_blocks(desk.catalog, found))
        if isinstance(block, Heading)
        and block.text == "What preferring one costs"
        and isinstance(after, Bullets)
    )
    assert said == ("Invented Works Siskin is held back by a safety notice, whatever it costs.",)


def test_the_table_adds_up_and_names_both():
    desk, found = compared()
    (table,) = [block for block in versus_blocks(desk.catalog, found) if isinstance(block, Table)]

    assert [column.title for column in table.columns][2:] == ["Heron", "Siskin", "Points"]
    assert table.rows[-1][0] == "Score"
    assert table.rows[-1][-1] == "-5.3"
    headings = [b.text for b in versus_blocks(desk.catalog, found) if isinstance(b, Heading)]
    assert headings[0] == "Invented Works Heron against Invented Works Siskin"
    assert "Disclosure" in headings
