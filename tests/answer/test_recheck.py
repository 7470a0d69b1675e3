"""Which answers given no longer hold after prices, firmware or figures changed."""

from datetime import date
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from spindlewise.answer.answer_log import to_log
from spindlewise.answer.ranking import rank
from spindlewise.answer.recheck import recheck

NOTICE = {
    "date": date(2026, 11, 1),
    "ended": "none",
    "what": "May crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def of(name, weight, **changes):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight),)}, **changes)


HERON, SISKIN = of("heron", 330), of("siskin", 300)
PRICES = [worlds.price("heron", 500), worlds.price("siskin", 650)]


def logged(products=(HERON, SISKIN), prices=PRICES, keep_private=False, **buyer):
    desk = worlds.desk(products, prices)
    return to_log(desk, rank(desk, worlds.buyer(**buyer)), keep_private)


def again(entry, products=(HERON, SISKIN), prices=PRICES):
    return recheck(worlds.desk(products, prices), [entry])[0]


def told(found):
    return [(c.product, c.what, c.before, c.now) for c in found.because]


def test_nothing_changed_so_it_holds():
    found = again(logged())

    assert (found.verdict, found.pick_now, found.because) == ("holds", "heron", ())


def test_a_price_fall_takes_the_pick_and_is_the_reason():
    found = again(logged(), prices=[PRICES[0], worlds.price("siskin", 450)])

    assert (found.verdict, found.pick_now) == ("no longer holds", "siskin")
    assert told(found) == [("siskin", "price", "650.00", "450.00")]


def test_a_fall_that_changes_no_pick_is_told_but_the_answer_holds():
    found = again(logged(), prices=[PRICES[0], worlds.price("siskin", 640)])

    assert found.verdict == "holds, on other figures"
    assert told(found) == [("siskin", "price", "650.00", "640.00")]


def test_a_correction_a_notice_and_a_newcomer_are_reasons():
    corrected = again(logged(), (of("heron", 334), SISKIN))
    assert told(corrected) == [("heron", "weight", "330", "334")]

    warned = again(logged(), (of("heron", 330, safety_notices=(NOTICE,)), SISKIN))
    assert (warned.verdict, warned.pick_now) == ("no longer holds", "siskin")
    assert told(warned) == [("heron", "safety", "no safety notice", "under a safety notice")]

    added = again(logged(), (HERON, SISKIN, of("auk", 290)), [*PRICES, worlds.price("auk", 300)])
    assert (added.verdict, told(added)) == (
        "no longer holds",
        [("auk", "product", "not in the catalog", "in the catalog")],
    )
    gone = again(logged(), (HERON,))
    assert told(gone) == [("siskin", "product", "in the catalog", "gone")]


def test_a_product_that_now_fails_a_need_says_which():
    found = again(logged(budget=700), prices=[worlds.price("heron", 800), PRICES[1]])

    assert found.pick_now == "siskin"
    assert told(found) == [
        ("heron", "price", "500.00", "800.00"),
        ("heron", "needs", "no need stands against it", "it costs EUR 800.00, EUR 100.00 over the budget"),
    ]


def test_firmware_that_arrived_is_a_reason():
    doubled = (worlds.link("ANT+", "one side doubled", "absent"),)
    entry = logged((of("heron", 330, links=doubled), SISKIN), points={"detail": 1})
    found = again(entry, (of("heron", 330, links=(worlds.link("ANT+", metrics="carried"),)), SISKIN))

    assert (found.verdict, found.pick_now) == ("no longer holds", "heron")
    assert ("heron", "detail", "one side doubled", "power, balance and stroke metrics") in told(found)


def test_an_answer_that_rested_on_what_was_not_kept_cannot_be_rechecked():
    doubled = (worlds.link("ANT+", "one side doubled", "absent"),)
    products = (of("heron", 330, links=doubled, sides="left"), of("siskin", 330))
    prices = [worlds.price("heron", 500), worlds.price("siskin", 600)]
    riding = {"balance_left_pct": {"low": 50.0, "high": 50.0}}
    entry = logged(products, prices, riding=riding, points={"price": 1, "reading_uncertainty": 1})

    assert (entry.pick, entry.pick_without_private) == ("heron", "siskin")
    assert again(entry, products, prices).verdict == "cannot tell"
    kept = logged(
        products, prices, keep_private=True, riding=riding, points={"price": 1, "reading_uncertainty": 1}
    )
    assert again(kept, products, prices).verdict == "holds"


def test_a_region_that_is_gone_cannot_be_served():
    entry = logged(currency="USD")
    desk = worlds.desk((HERON, SISKIN), PRICES)
    early = type(desk)(desk.catalog, date(2025, 12, 1))

    found = recheck(early, [entry])[0]
    assert (found.verdict, found.note) == ("cannot tell", "no rate from USD to EUR on or before 2025-12-01")


@given(
    st.lists(st.tuples(st.integers(30_000, 90_000), st.integers(30_000, 90_000)), min_size=1, max_size=5),
    st.integers(30_000, 90_000),
)
@settings(deadline=None, max_examples=40)
def test_recheck_finds_exactly_what_a_full_recomputation_finds(asked, fallen):
    def prices(heron, siskin):
        return [
            worlds.price("heron", Decimal(heron) / 100),
            worlds.price("siskin", Decimal(siskin) / 100),
        ]

    entries = [logged(prices=prices(*pair)) for pair in asked]
    now = worlds.desk((HERON, SISKIN), prices(50_000, fallen))
    found = recheck(now, entries)
    for pair, each in zip(asked, found, strict=True):
        before = rank(worlds.desk((HERON, SISKIN), prices(*pair)), worlds.buyer())
        after = rank(now, worlds.buyer())
        changed = (before.pick.product, before.pick.level_with) != (after.pick.product, after.pick.level_with)
        assert (each.verdict == "no longer holds") is changed


def test_what_is_out_then_and_now_is_no_reason():
    bulky = of("bulky", 330, cleat={"bolts": "two-bolt", "pattern": "Keel", "height_mm": 5.5})
    needs = {"shoes": {"bolts": "three-bolt"}}
    products = (HERON, SISKIN, bulky)
    entry = logged(products, [*PRICES, worlds.price("bulky", 500)], needs=needs)
    found = again(entry, products, [*PRICES, worlds.price("bulky", 400)])

    assert (found.verdict, found.because) == ("holds, on other figures", ())
