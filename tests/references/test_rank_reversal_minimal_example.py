"""Rank reversal by min-max scaling over the candidates: the smallest example, constructed by hand.

The phenomenon: Shin, Lee, Chun and Chung 2013, Issues in Information Systems 14(1):358-365.
"""

import numpy as np
import pytest

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable

AB = np.array([[10.0, 4.0], [8.0, 6.0]])
ABD = np.vstack((AB, [[0.0, 4.0]]))
WEIGHTS = np.array([0.6, 0.4])


def min_max(figures):
    return ((figures - figures.min(axis=0)) / np.ptp(figures, axis=0)) @ WEIGHTS


def ours(figures):
    merits = merits_at([Curve((0.0, 10.0), (0.0, 1.0))] * 2, figures)
    names = ("A", "B", "D")[: len(figures)]
    scores = score(MeritTable(names, ("x", "y"), merits, merits, merits), WEIGHTS).expected
    return scores, [names[row] for row in ranking_order(names, scores)]


def test_min_max_scaling_lets_a_dominated_third_product_turn_the_order_round():
    assert min_max(AB) == pytest.approx([0.6, 0.4])
    assert min_max(ABD) == pytest.approx([0.6, 0.88, 0.0])


def test_our_fixed_scale_does_not():
    before, order_before = ours(AB)
    after, order_after = ours(ABD)
    assert before == pytest.approx([76, 72])
    assert after == pytest.approx([76, 72, 16])
    assert (order_before, order_after) == (["A", "B"], ["A", "B", "D"])
