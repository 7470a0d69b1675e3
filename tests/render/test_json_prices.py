from decimal import Decimal

from small_answers import buyer, desk
from spindlewise.answer.break_evens import break_evens
from spindlewise.answer.price_change import at_price, price_change
from spindlewise.answer.price_record import price_record
from spindlewise.render.json_prices import change_json, history_json

PRODUCT = "tarnquell-liskar-duo"


def test_a_record_keeps_amounts_as_text_and_the_price_before() -> None:
    lines = price_record(desk().catalog.prices, PRODUCT, desk().day)
    prices = history_json(PRODUCT, lines, "2026-11-20")["prices"]
    assert isinstance(prices, list)
    assert len(prices) == len(lines)
    assert all(isinstance(p["amount"], str) for p in prices)  # type: ignore[index,call-overload]
    assert any(p["before"] for p in prices)  # type: ignore[index,call-overload]


def test_a_change_tells_moves_pick_and_the_ranking_after_it() -> None:
    after = at_price(desk(), PRODUCT, "EU", "EUR", Decimal(150))
    change = price_change(desk(), after, buyer("nothing-for-it"), PRODUCT)
    found = change_json(change, after.catalog.prices[-1], break_evens(after, change.after), written=False)
    assert (found["pick_before"], found["pick_after"], found["pick_changes"]) == (None, PRODUCT, True)
    move = found["moves"][0]  # type: ignore[index,call-overload]
    assert (move["move"], move["rank_before"], move["rank_after"]) == ("comes in", None, 1)  # type: ignore[index,call-overload]
    assert found["ranking"]["pick"] == PRODUCT  # type: ignore[index,call-overload]
