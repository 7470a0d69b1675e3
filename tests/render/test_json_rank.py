from dataclasses import replace

import worlds
from small_answers import desk, reply
from spindlewise.answer.break_evens import break_evens
from spindlewise.answer.level_reasons import LevelReasons
from spindlewise.answer.paid import Unpriced
from spindlewise.answer.ranking import rank
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


def test_the_pick_is_told_why_it_is_level_with_each_and_each_why_with_the_pick() -> None:
    """Of every two of hundreds it would be a hundred thousand reasons, and nobody asks for them."""
    scales = {"auk": 345, "brant": 330, "crake": 318, "dunlin": 330}
    products = [
        worlds.product(
            name, {**(worlds.TRIED if name == "auk" else {}), "weight_g": (worlds.weighed(grams),)}
        )
        for name, grams in scales.items()
    ]
    of_four = worlds.desk(products, [worlds.price(name, 500) for name in scales])
    ranking = rank(of_four, worlds.buyer(points={"price": 40, "weight": 30, "reading_uncertainty": 30}))
    reasons, pick = LevelReasons(ranking), ranking.placed[0].product
    only = {p.product: [r.product for r in reasons.of(p) if r.only_by] for p in ranking.placed}
    told = {
        p["product"]: [each["product"] for each in p["level_only_by"]]  # type: ignore[index,call-overload,union-attr]
        for p in rank_json(ranking, break_evens(of_four, ranking))["order"]  # type: ignore[union-attr]
    }
    assert only[pick]
    assert any(set(others) - {pick} for name, others in only.items() if name != pick), "some are not told"
    assert told == {n: o if n == pick else [x for x in o if x == pick] for n, o in only.items()}
