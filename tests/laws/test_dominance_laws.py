"""Laws of dominance: the fast filter against its plain twin, and what follows from the words."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.decide.dominance import dominated_pairs, dominates, undominated

coarse_merits = (
    st.integers(1, 4)
    .flatmap(lambda m: st.lists(st.lists(st.integers(0, 6), min_size=m, max_size=m), min_size=1, max_size=25))
    .map(lambda rows: np.array(rows) / 6)
)


def plainly_undominated(merits):
    return [not any(dominates(other, own) for other in merits) for own in merits]


@settings(deadline=None)
@given(coarse_merits)
def test_the_fast_filter_agrees_with_its_plain_twin(merits):
    assert undominated(merits).tolist() == plainly_undominated(merits)


@settings(deadline=None)
@given(coarse_merits)
def test_the_dominated_are_those_at_the_far_end_of_a_pair(merits):
    pairs = dominated_pairs(merits)
    assert all(dominates(merits[a], merits[b]) for a, b in pairs)
    assert set(pairs[:, 1].tolist()) == set(np.flatnonzero(~undominated(merits)).tolist())
    assert pairs.tolist() == sorted(pairs.tolist())


@pytest.mark.parametrize("n", [63, 64, 65, 129, 700])
@pytest.mark.parametrize("m", [1, 2, 4])
def test_the_fast_filter_agrees_with_its_plain_twin_across_blocks(n, m):
    merits = np.round(np.random.default_rng(n * m).random((n, m)), 2)
    assert undominated(merits).tolist() == plainly_undominated(merits)


def test_rows_that_all_lie_on_one_sum_all_stay():
    drawn = np.random.default_rng(3).dirichlet(np.ones(4), 300)
    assert undominated(drawn).all()


def test_sums_that_round_alike_do_not_hide_a_dominator():
    # 1 + 2^-60 rounds to 1: the second row dominates the first although their sums are equal
    merits = np.array([[1.0, 0.0], [1.0, 2.0**-60], [1.0, 2.0**-61]])
    assert undominated(merits).tolist() == [False, True, False]


def test_a_whole_market_of_100_000_products_is_filtered_by_four_criteria():
    merits = np.random.default_rng(11).random((100_000, 4))
    stays = undominated(merits)
    front = merits[stays]
    assert undominated(front).all()
    for gone in merits[~stays][::2000]:
        assert any(dominates(best, gone) for best in front)
