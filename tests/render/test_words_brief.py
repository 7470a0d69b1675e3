"""The brief answer as a message."""

import worlds
from spindlewise.answer.brief import brief
from spindlewise.render.naming import naming
from spindlewise.render.words_brief import brief_text


def said(products=None, prices=None, **buyer):
    heron = worlds.product("heron", {"weight_g": (worlds.weighed(330.0),)})
    siskin = worlds.product("siskin", {"weight_g": "unknown"})
    desk = worlds.desk(
        products or [heron, siskin, worlds.plain("gull", 300.0)],
        prices or [worlds.price("heron", 500), worlds.price("siskin", 520)],
    )
    return brief_text(desk.catalog, brief(desk, worlds.buyer(**buyer)), naming(desk.catalog))


def test_pick_price_next_saddle_disclosure_day_and_notice_of_invention():
    text = said(present_pedals="gull")

    assert "Our pick: Invented Works Heron at EUR 500.00 (street price at Quayside Wheels" in text
    assert "Next: Invented Works Siskin (" in text
    assert "You will see: both sides over ANT+; balance arrives." in text
    assert "Saddle: no change (by common practice; it restores the distance" in text
    assert "a medical practitioner" in text
    assert "Weight: 30 g heavier." in text
    assert "left-hand thread" in text
    assert "Disclosure: Invented Works Heron: the tested unit was bought at retail" in text
    assert "As of 2026-11-20." in text
    assert text.endswith("Everything here is invented.\n")


def test_nothing_fits_and_what_nearly_did():
    text = said(budget=400)

    assert "No recommendation: nothing in the catalog meets all the needs." in text
    assert "Nearly: Invented Works" in text
    assert "Disclosure" not in text


def test_what_is_not_known_of_the_pick_is_said():
    bare = worlds.product("bare", {"weight_g": "unknown", "stack_mm": "unknown", "ingress": "unknown"})
    text = said(
        [bare, worlds.plain("gull")],
        [worlds.price("bare", 500)],
        needs={"water": "IPX6"},
        present_pedals="gull",
    )

    assert "Not known of it: weight; IPX6: ingress code unknown." in text
    assert "Saddle: the change cannot be said" in text
    assert "heavier" not in text


def test_level_products_and_a_notice_are_named():
    notice = {
        "date": worlds.DAY,
        "ended": "none",
        "what": "May crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    pair = [
        worlds.product(n, {"weight_g": (worlds.weighed(w, 9.0),)})
        for n, w in (("heron", 330.0), ("siskin", 331.0))
    ]
    risky = worlds.product("risky", safety_notices=(notice,))
    text = said([*pair, risky], [worlds.price(n, 500) for n in ("heron", "siskin", "risky")])

    assert "Level with it: Invented Works Siskin." in text
    assert "Safety notice. Invented Works Risky: May crack. Stop riding." in text
    alone = said([risky], [worlds.price("risky", 500)])
    assert "No recommendation: all that no need keeps out is held back by a safety notice." in alone
