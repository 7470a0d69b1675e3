from dataclasses import replace

from small_answers import desk, reply
from spindlewise.answer.break_evens import break_evens
from spindlewise.answer.paid import Unpriced
from spindlewise.answer.standing import Standing
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.render.json_rank import break_even_json, nothing_json, price_json, rank_json, standing_json


def test_scores_and_merits_are_numbers_and_money_is_text() -> None:
    ranking = reply().ranking
    found = rank_json(ranking, break_evens(desk(), ranking))
    first = found["order"][0]  # type: ignore[index,call-overload]
    assert isinstance(first["score"]["expected"], float)  # type: ignore[index,call-overload]
    assert first["price"]["amount"] == "689.00"  # type: ignore[index,call-overload]
    assert first["merits"]["price"]["value"] == "689.00"  # type: ignore[index,call-overload]
    assert first["merits"]["weight"]["value"] == 346.0  # type: ignore[index,call-overload]


def test_yen_have_no_decimals() -> None:
    standing = Standing("price", 98000.0, None, None, "JPY", "observed price", None, "")
    assert standing_json(standing)["value"] == "98000"


def test_no_price_is_null_with_its_reason() -> None:
    assert price_json(Unpriced("no price in force")) == {
        "amount": None,
        "currency": None,
        "because": "no price in force",
    }


def test_a_break_even_that_is_no_price_is_null() -> None:
    assert break_even_json(None, "EUR") is None
    assert break_even_json(BreakEven(Outcome.ANY_PRICE), "EUR") is None


def test_nothing_has_the_same_keys() -> None:
    nothing = nothing_json("2026-11-20", "you", "why")
    ranking = replace(reply().ranking)
    assert set(nothing) - {"because"} <= set(rank_json(ranking, break_evens(desk(), ranking)))
