"""Kendall 1945 and Spearman 1904 as the scipy library computes them (its documented examples, and ties)."""

import numpy as np
import pytest
from scipy import stats

from spindlewise.decide.rank_agreement import kendall_tau_b, pearson, spearman


def test_documented_examples() -> None:
    assert kendall_tau_b([12, 2, 1, 12, 2], [1, 4, 7, 1, 0]) == pytest.approx(-0.47140452079103173)
    assert spearman([1, 2, 3, 4, 5], [5, 6, 7, 8, 7]) == pytest.approx(0.8207826816681233)


def test_one_swapped_pair_of_six() -> None:
    assert kendall_tau_b([1, 2, 3, 4], [1, 3, 2, 4]) == pytest.approx(2 / 3)


def test_rows_with_many_ties() -> None:
    rng = np.random.default_rng(20240101)
    for _ in range(50):
        x, y = rng.integers(0, 5, (2, 12))
        assert kendall_tau_b(x, y) == pytest.approx(stats.kendalltau(x, y).statistic)
        assert spearman(x, y) == pytest.approx(stats.spearmanr(x, y).statistic)
        assert pearson(x, y) == pytest.approx(stats.pearsonr(x, y).statistic)
