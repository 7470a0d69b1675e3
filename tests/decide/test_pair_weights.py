"""Weights from statements in pairs."""

import itertools

import pytest

from spindlewise.decide.pair_weights import pair_weights


def test_statements_that_agree_give_their_weights_exactly() -> None:
    found = pair_weights([("price", "weight", 2.0), ("weight", "stack", 3.0), ("price", "stack", 6.0)])

    assert found.weights == pytest.approx({"price": 0.6, "weight": 0.3, "stack": 0.1})
    assert found.complete
    assert found.ratio == pytest.approx(0.0, abs=1e-12)
    assert found.contradiction is None


def test_less_than_is_the_reciprocal() -> None:
    assert pair_weights([("price", "weight", 0.5)]).weights == pytest.approx(
        pair_weights([("weight", "price", 2.0)]).weights
    )


def test_two_criteria_cannot_contradict_each_other() -> None:
    found = pair_weights([("price", "weight", 3.0)])

    assert found.weights == pytest.approx({"price": 0.75, "weight": 0.25})
    assert (found.complete, found.ratio, found.contradiction) == (True, 0.0, None)


def test_a_chain_of_statements_is_enough() -> None:
    found = pair_weights([("price", "weight", 2.0), ("weight", "stack", 4.0), ("stack", "warranty", 1.5)])

    weights = found.weights
    assert weights["price"] / weights["weight"] == pytest.approx(2.0)
    assert weights["weight"] / weights["stack"] == pytest.approx(4.0)
    assert weights["stack"] / weights["warranty"] == pytest.approx(1.5)
    assert not found.complete
    assert found.index == pytest.approx(0.0, abs=1e-12)
    assert found.ratio is None
    assert found.contradiction is None


def test_a_chain_of_great_factors_keeps_its_digits() -> None:
    weights = pair_weights([("a", "b", 1e6), ("b", "c", 1e6), ("c", "d", 1e6)]).weights

    assert weights["b"] / weights["c"] == pytest.approx(1e6, rel=1e-6)
    assert weights["c"] / weights["d"] == pytest.approx(1e6, rel=1e-6)


def test_the_statement_that_the_others_contradict_is_named_with_what_would_fit() -> None:
    true = {"price": 8.0, "weight": 4.0, "stack": 2.0, "warranty": 1.0}
    statements = [(a, b, true[a] / true[b]) for a, b in itertools.combinations(true, 2)]
    statements[statements.index(("price", "stack", 4.0))] = ("price", "stack", 0.5)

    found = pair_weights(statements)

    worst = found.contradiction
    assert worst is not None
    assert (worst.more, worst.than, worst.times) == ("price", "stack", 0.5)
    assert worst.fits == pytest.approx(4.0)
    assert worst.deviation > 0.5
    assert found.ratio is not None
    assert found.ratio > 0.1


def test_a_circle_of_twice_as_much_by_hand() -> None:
    # each row of the matrix holds 1, 2 and 1/2: the eigenvalue is 3.5, and all weigh alike
    found = pair_weights([("price", "weight", 2.0), ("weight", "stack", 2.0), ("stack", "price", 2.0)])

    assert found.weights == pytest.approx(dict.fromkeys(("price", "stack", "weight"), 1 / 3))
    assert (found.lambda_max, found.index) == (pytest.approx(3.5), pytest.approx(0.25))
    assert found.ratio == pytest.approx(0.25 / 0.58)


def test_a_slight_contradiction_late_in_the_alphabet_is_found() -> None:
    true = {"price": 8.0, "weight": 4.0, "stack": 2.0, "warranty": 1.0}
    statements = [(a, b, true[a] / true[b]) for a, b in itertools.combinations(true, 2)]
    statements[statements.index(("stack", "warranty", 2.0))] = ("stack", "warranty", 2.5)

    worst = pair_weights(statements).contradiction

    assert worst is not None
    assert (worst.more, worst.than, worst.fits) == ("stack", "warranty", pytest.approx(2.0))
    assert 0.05 < worst.deviation < 0.25


def test_a_million_times_and_a_millionth_may_be_said() -> None:
    for times in (1e6, 1e-6):
        weights = pair_weights([("price", "weight", times)]).weights
        assert weights["price"] / weights["weight"] == pytest.approx(times)


def test_a_contradiction_among_incomplete_statements_is_named_too() -> None:
    statements = [
        ("price", "weight", 2.0),
        ("weight", "stack", 2.0),
        ("stack", "warranty", 2.0),
        ("weight", "warranty", 4.0),
        ("price", "warranty", 0.25),
    ]

    worst = pair_weights(statements).contradiction

    assert worst is not None
    assert (worst.more, worst.than) == ("price", "warranty")
    assert worst.fits == pytest.approx(8.0)


def test_a_statement_that_no_other_speaks_of_is_not_called_a_contradiction() -> None:
    circle = [("price", "weight", 2.0), ("weight", "stack", 2.0), ("price", "stack", 1.0)]

    worst = pair_weights([*circle, ("warranty", "price", 9.0)]).contradiction

    assert worst is not None
    assert "warranty" not in (worst.more, worst.than)


def test_of_statements_that_are_off_equally_far_the_first_by_name_is_named() -> None:
    circle = [("price", "weight", 2.0), ("weight", "stack", 2.0), ("stack", "price", 2.0)]

    for order in itertools.permutations(circle):
        worst = pair_weights(order).contradiction
        assert worst is not None
        assert (worst.more, worst.than, worst.fits) == ("price", "weight", pytest.approx(0.25))


def test_the_order_of_statements_changes_no_bit() -> None:
    statements = [("price", "weight", 3.0), ("stack", "weight", 1.7), ("price", "stack", 2.3)]

    results = [pair_weights(order) for order in itertools.permutations(statements)]

    assert all(result == results[0] for result in results)


def test_beyond_ten_criteria_the_ratio_is_unknown() -> None:
    names = [f"criterion {i:02}" for i in range(11)]
    statements = [(a, b, 1.0) for a, b in itertools.combinations(names, 2)]

    found = pair_weights(statements)

    assert found.complete
    assert found.index == pytest.approx(0.0, abs=1e-12)
    assert found.ratio is None
    assert pair_weights(statements[10:]).ratio is not None


def test_every_fault_is_listed_at_once() -> None:
    with pytest.raises(ValueError, match="compared") as refused:
        pair_weights(
            [
                ("price", "price", 2.0),
                ("price", "weight", 2.0),
                ("weight", "price", 2.0),
                ("stack", "detail", 0.0),
                ("warranty", "detail", float("nan")),
                ("warranty", "stack", float("inf")),
            ]
        )

    said = str(refused.value)
    assert said.startswith("price is compared with itself; stack 0 times detail: ")
    assert said.count("; ") == 5
    assert "price is compared with itself" in said
    assert (
        "; price and weight are compared more than once (price 2 times weight, weight 2 times price); "
        in said
    )
    assert "stack 0 times detail: the factor lies between a millionth and a million; " in said
    assert "warranty nan times detail" in said
    assert "warranty inf times stack" in said
    assert said.endswith("; no statement connects these groups: detail, stack, warranty | price, weight")


def test_no_statements_are_refused() -> None:
    with pytest.raises(
        ValueError,
        match=r"^no statements given; state at least how much more one criterion matters than another$",
    ):
        pair_weights([])
