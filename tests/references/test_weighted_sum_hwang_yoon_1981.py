"""Hwang and Yoon 1981, Multiple Attribute Decision Making: the fighter-aircraft problem, additive weighting.

Scaled there by the best of each column; value curves with those anchors give the same numbers in our score.
Inputs as transcribed from pp. 133-134; the results are recomputed (the book's own are rounded).
"""

import numpy as np
import pytest

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable

FIGURES = np.array(
    [
        [2.0, 1500, 20000, 5.5, 5, 9],
        [2.5, 2700, 18000, 6.5, 3, 5],
        [1.8, 2000, 21000, 4.5, 7, 7],
        [2.2, 1800, 20000, 5.0, 5, 5],
    ]
)
WEIGHTS = np.array([0.2, 0.1, 0.1, 0.1, 0.2, 0.3])
NAMES, CRITERIA = ("A1", "A2", "A3", "A4"), ("X1", "X2", "X3", "X4", "X5", "X6")


def scored(merits):
    table = MeritTable(NAMES, CRITERIA, merits, merits, merits)
    scores = score(table, WEIGHTS).expected
    return scores, [NAMES[row] for row in ranking_order(NAMES, scores)]


def test_share_of_the_best_of_each_column():
    best = FIGURES.max(axis=0)
    merits = merits_at([Curve((0.0, float(top)), (0.0, 1.0)) for top in best], FIGURES)
    merits[:, 3] = FIGURES[:, 3].min() / FIGURES[:, 3]
    scores, order = scored(merits)
    assert scores / 100 == pytest.approx([0.8354689755, 0.7073260073, 0.8514074074, 0.7374285714], abs=1e-9)
    assert order == ["A3", "A1", "A4", "A2"]


def test_curves_from_the_worst_to_the_best_of_each_column():
    ends = [(float(column.min()), float(column.max())) for column in FIGURES.T]
    curves = [Curve(end, (1.0, 0.0) if k == 3 else (0.0, 1.0)) for k, end in enumerate(ends)]
    scores, order = scored(merits_at(curves, FIGURES))
    assert scores / 100 == pytest.approx([0.5738095238, 3 / 10, 71 / 120, 0.3809523810], abs=1e-9)
    assert order == ["A3", "A1", "A4", "A2"]
