import math

import numpy as np
import pytest

from spindlewise.decide import level as level_module
from spindlewise.decide.level import difference_uncertainty, footing, levels, ranks, spreads
from spindlewise.decide.score import score
from spindlewise.decide.table import MeritTable


def table(*cells):
    """One criterion a product pair: cells are (low, expected, high), one a product."""
    low, expected, high = (np.array([[cell[k]] for cell in cells]) for k in range(3))
    return MeritTable(tuple("abcdefgh"[: len(cells)]), ("weight",), low, expected, high)


ONE = np.array([1.0])


def test_the_spread_is_a_root_sum_of_squares_over_criteria():
    expected = np.array([[0.5, 0.5]])
    uneven = MeritTable(
        ("a",), ("x", "y"), expected - np.array([[0.3, 0.4]]), expected, expected + np.array([[0.1, 0.0]])
    )
    found = spreads(uneven, np.array([1.0, 1.0]))
    assert found.down == pytest.approx([math.hypot(15, 20)])
    assert found.up == pytest.approx([5.0])


def test_the_leaders_downside_and_the_followers_upside_make_the_uncertainty_of_the_lead():
    pair = table((0.77, 0.80, 0.95), (0.30, 0.70, 0.74))
    assert difference_uncertainty(spreads(pair, ONE), 0, 1) == pytest.approx(5.0)


@pytest.mark.parametrize(("gap", "is_level"), [(0.04, True), (0.05, True), (0.0501, False), (0.2, False)])
def test_a_lead_within_its_uncertainty_is_level_the_limit_included(gap, is_level):
    found = levels(table((0.77, 0.80, 0.80), (0.1, 0.80 - gap, 0.84 - gap)), ONE)
    assert found.level.tolist() == [[False, is_level], [is_level, False]]
    assert found.ranks.tolist() == [1, 1 if is_level else 2]
    assert found.level_with(0) == ((1,) if is_level else ())


def test_level_does_not_carry_over():
    found = levels(table((0.74, 0.80, 0.8), (0.69, 0.75, 0.75), (0.7, 0.70, 0.7)), ONE)
    assert found.level_with(0) == (1,)
    assert found.level_with(1) == (0, 2)
    assert found.ranks.tolist() == [1, 1, 2]


def test_an_unknown_that_may_reach_far_up_is_level_with_the_first():
    found = levels(table((0.80, 0.80, 0.80), (0.70, 0.70, 0.70), (0.20, 0.20, 0.90)), ONE)
    assert found.ranks.tolist() == [1, 2, 1]


def test_products_held_back_count_after_all_others_and_are_level_only_among_themselves():
    found = levels(
        table((0.9, 0.9, 0.9), (0.5, 0.5, 0.5), (0.9, 0.9, 0.9), (0.4, 0.4, 0.4)), ONE, [1, 0, 1, 0]
    )
    assert found.ranks.tolist() == [3, 1, 3, 2]
    assert found.level_with(0) == (2,)
    assert found.level_with(1) == ()


def test_ranks_alone_and_in_chunks_are_the_same(monkeypatch):
    rng = np.random.default_rng(2)
    drawn = np.sort(rng.random((3, 60, 4)), axis=0)
    many = MeritTable(tuple(f"p{i}" for i in range(60)), tuple("wxyz"), *drawn)
    held = rng.random(60) < 0.2
    whole = levels(many, np.arange(1.0, 5.0), held)
    monkeypatch.setattr(level_module, "ROWS_AT_ONCE", 7)
    in_parts = levels(many, np.arange(1.0, 5.0), held)
    assert np.array_equal(whole.ranks, in_parts.ranks)
    assert np.array_equal(whole.level, in_parts.level)
    alone = ranks(many, np.arange(1.0, 5.0), held)
    assert np.array_equal(alone, whole.ranks)
    # ranks are whole numbers, and level is a yes or no that rows can be taken by
    assert (alone.dtype, whole.ranks.dtype, whole.level.dtype) == (np.intp, np.intp, np.bool_)


def test_the_pairwise_rule_written_out_gives_the_same():
    rng = np.random.default_rng(9)
    low, expected, high = np.sort(rng.random((3, 12, 3)), axis=0)
    some = MeritTable(tuple(f"p{i}" for i in range(12)), tuple("xyz"), low, expected, high)
    weights = np.array([0.5, 0.3, 0.2])
    found = levels(some, weights)
    for i in range(12):
        for j in range(12):
            scores = [100 * float(weights @ expected[row]) for row in (i, j)]
            better, worse = (i, j) if scores[0] >= scores[1] else (j, i)
            squares = sum((100 * weights[k] * (expected[better, k] - low[better, k])) ** 2 for k in range(3))
            squares += sum((100 * weights[k] * (high[worse, k] - expected[worse, k])) ** 2 for k in range(3))
            assert found.level[i, j] == (i != j and abs(scores[0] - scores[1]) <= math.sqrt(squares))


@pytest.mark.parametrize("held_share", [0.0, 0.3, 1.0])
def test_one_products_footing_is_its_row_of_the_whole(held_share):
    rng = np.random.default_rng(4)
    low, expected, high = np.sort(rng.integers(0, 9, (3, 30, 3)) / 8, axis=0)
    some = MeritTable(tuple(f"p{i:02}" for i in range(30)), tuple("xyz"), low, expected, high)
    weights, held = np.array([3.0, 2.0, 1.0]), rng.random(30) < held_share
    whole, spread = levels(some, weights, held), spreads(some, weights)
    for row in range(30):
        alone = footing(score(some, weights).expected, spread, held, row)
        assert (alone.rank, alone.level_with) == (whole.ranks[row], whole.level_with(row))
