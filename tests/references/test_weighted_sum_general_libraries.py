"""Our score against the weighted sums of pymcdm and scikit-criteria on random tables of merits."""

import numpy as np
import pytest
from pymcdm.methods import WSM
from skcriteria import mkdm
from skcriteria.agg.simple import WeightedSumModel

from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable


def unscaled(values, cost=False):
    return values


@pytest.mark.parametrize("seed", range(8))
def test_scores_and_order_on_random_tables(seed):
    rng = np.random.default_rng(seed)
    n, m = int(rng.integers(2, 30)), int(rng.integers(2, 13))
    merits, weights = rng.random((n, m)), rng.dirichlet(np.ones(m))
    names = tuple(f"p{i:02}" for i in range(n))
    scores = score(
        MeritTable(names, tuple(f"c{k}" for k in range(m)), merits, merits, merits), weights
    ).expected

    theirs = WSM(normalization_function=unscaled)(merits, weights, np.ones(m))
    assert scores / 100 == pytest.approx(theirs, abs=1e-10)
    other = WeightedSumModel().evaluate(mkdm(merits, [max] * m, weights=weights))
    assert scores / 100 == pytest.approx(other.e_.score, abs=1e-10)
    assert (1 + np.argsort(ranking_order(names, scores))).tolist() == other.rank_.tolist()
