from decimal import Decimal

import worlds
from spindlewise.answer.price_change import WHAT_IF, at_price, price_change, with_row
from spindlewise.answer.ranking import rank

DESK = worlds.desk(
    [
        worlds.product("aa", worlds.TRIED),
        worlds.product("bb", worlds.TRIED),
        worlds.product("cc", {**worlds.TRIED, "weight_g": (worlds.weighed(400.0),)}),
    ],
    [
        worlds.price("aa", 600),
        worlds.price("bb", 650),
        worlds.price("bb", 700, seller="Other"),
        worlds.price("cc", 900),
    ],
)
BUYER = worlds.buyer()


def test_a_lower_price_moves_its_product_up_and_the_leader_down() -> None:
    change = price_change(DESK, with_row(DESK, worlds.price("bb", 500, line=9, seller="Third")), BUYER, "bb")
    assert {m.product: m.way for m in change.moves} == {"bb": "up", "aa": "down", "cc": "stays"}
    assert [m.product for m in change.moves] == ["bb", "aa", "cc"]
    assert change.pick_changes


def test_a_higher_price_of_another_seller_changes_nothing() -> None:
    change = price_change(DESK, with_row(DESK, worlds.price("bb", 800, line=9, seller="Third")), BUYER, "bb")
    assert {m.way for m in change.moves} == {"stays"}
    assert not change.pick_changes


def test_a_what_if_price_stands_in_place_of_all_others_of_the_region() -> None:
    after = at_price(DESK, "bb", "EU", "EUR", Decimal("900.00"))
    paid = rank(after, BUYER).prices["bb"]
    assert (paid.amount, paid.row.seller) == (Decimal("900.00"), WHAT_IF)  # type: ignore[union-attr]
    assert after.day == DESK.day
    assert len(DESK.catalog.prices) == 4


def test_a_price_over_the_budget_drops_out_and_one_within_comes_in() -> None:
    buyer = worlds.buyer(budget=800)
    dear = price_change(DESK, at_price(DESK, "aa", "EU", "EUR", Decimal(850)), buyer, "aa")
    assert {m.product: m.way for m in dear.moves} == {"bb": "stays", "aa": "drops out"} or dear.pick_changes
    assert next(m for m in dear.moves if m.product == "aa").way == "drops out"
    cheap = price_change(DESK, at_price(DESK, "cc", "EU", "EUR", Decimal(700)), buyer, "cc")
    assert next(m for m in cheap.moves if m.product == "cc").way == "comes in"


def test_from_no_pick_to_a_pick() -> None:
    buyer = worlds.buyer(budget=300)
    change = price_change(DESK, at_price(DESK, "aa", "EU", "EUR", Decimal(299)), buyer, "aa")
    assert change.before.pick is None
    assert change.after.pick is not None
    assert change.pick_changes
