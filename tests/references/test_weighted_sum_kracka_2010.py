"""Kracka, Brauers and Zavadskas 2010, Inzinerine Ekonomika 21(4):352-359: a weighted sum.

Columns are scaled to add up to one, figures of which less is better by their reciprocals first.
"""

import numpy as np
import pytest

from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable

FIGURES = np.array(
    [
        [33.95, 23.78, 11.45, 39.97, 29.44, 167.10, 3.852],
        [38.9, 4.17, 6.32, 0.01, 4.29, 132.52, 25.184],
        [37.59, 9.36, 8.23, 4.35, 10.22, 136.71, 10.845],
        [30.44, 37.59, 13.91, 74.08, 45.10, 198.34, 2.186],
        [36.21, 14.79, 9.17, 17.77, 17.06, 148.3, 6.610],
        [37.8, 8.55, 7.97, 2.35, 9.25, 134.83, 11.935],
    ]
)
MORE_IS_BETTER = np.array([False, False, False, False, True, False, True])


def test_scores_and_ranks():
    merits = np.where(MORE_IS_BETTER, FIGURES, 1 / FIGURES)
    merits = merits / merits.sum(axis=0)
    names = tuple("abcdef")
    table = MeritTable(names, tuple("tuvwxyz"), merits, merits, merits)
    scores = score(table, np.ones(7)).expected
    published = [0.12040426, 0.3458235, 0.13838192, 0.12841246, 0.12346084, 0.14351701]
    assert scores / 100 == pytest.approx(published, abs=1e-7)
    assert np.argsort(ranking_order(names, scores)).tolist() == [5, 0, 2, 3, 4, 1]
