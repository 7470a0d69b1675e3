"""Lahdelma and Salminen 2001, SMAA-2: cases small enough to be worked out on paper.

The closed forms are areas of polygons on the simplex of weights, derived here and not printed in the paper;
simulated chances must lie within four standard errors of them.
"""

import math

import numpy as np
import pytest

from spindlewise.decide.merit_draws import HELD, UNIFORM, SpreadMerits
from spindlewise.decide.stability import Stability, stability
from spindlewise.decide.table import MeritTable
from spindlewise.decide.weight_draws import AnyWeights, OrderedWeights

DRAWS = 200_000
NAN = [float("nan")] * 3
BASE = [[1, 0, 0], [0, 1, 0], [0, 0, 1], [0.5, 0.5, 0.5]]


def simulated(values, law, low=None, high=None) -> Stability:
    expected = np.array(values, dtype=float)
    names = tuple("ABCD"[: len(expected)])
    criteria = tuple(f"c{k}" for k in range(expected.shape[1]))
    if low is None:
        return stability(MeritTable(names, criteria, expected, expected, expected), law, draws=DRAWS)
    table = MeritTable(names, criteria, np.array(low, float), expected, np.array(high, float))
    kinds = np.where(table.low < table.high, UNIFORM, HELD)
    return stability(table, law, SpreadMerits(table, kinds), draws=DRAWS)


def assert_close(found, exact, draws=DRAWS) -> None:
    p = np.array(exact, dtype=float)
    assert (np.abs(found - p) <= 4 * np.sqrt(p * (1 - p) / draws) + 1e-12).all()


def test_case_a_two_criteria_and_a_compromise() -> None:
    found = simulated([[1, 0], [0, 1], [0.6, 0.6]], AnyWeights(2))

    assert_close(found.places, [[0.4, 0.1, 0.5], [0.4, 0.1, 0.5], [0.2, 0.8, 0.0]])
    assert_close(found.beats, [[0, 0.5, 0.4], [0.5, 0, 0.4], [0.6, 0.6, 0]])
    assert found.central_weights == pytest.approx(np.array([[0.8, 0.2], [0.2, 0.8], [0.5, 0.5]]), abs=3e-3)


def test_case_b_three_specialists_and_a_compromise() -> None:
    found = simulated(BASE, AnyWeights(3))

    assert_close(found.places, [[1 / 4, 1 / 12, 1 / 3, 1 / 3]] * 3 + [[1 / 4, 3 / 4, 0, 0]])
    assert_close(found.beats[3, 0], 3 / 4)
    assert_close(found.beats[0, 1], 1 / 2)
    assert found.central_weights == pytest.approx(
        np.array(
            [[2 / 3, 1 / 6, 1 / 6], [1 / 6, 2 / 3, 1 / 6], [1 / 6, 1 / 6, 2 / 3], [1 / 3, 1 / 3, 1 / 3]]
        ),
        abs=4e-3,
    )


def test_case_b_with_an_order_of_importance() -> None:
    found = simulated(BASE, OrderedWeights(((0,), (1,), (2,))))

    assert_close(found.places, [[3 / 4, 1 / 4, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1], [1 / 4, 3 / 4, 0, 0]])
    assert found.central_weights == pytest.approx(
        np.array([[2 / 3, 1 / 4, 1 / 12], NAN, NAN, [4 / 9, 13 / 36, 7 / 36]]), abs=3e-3, nan_ok=True
    )
    mean = found.first[0] * found.central_weights[0] + found.first[3] * found.central_weights[3]
    assert mean == pytest.approx([11 / 18, 5 / 18, 1 / 9], abs=2e-3)


def test_case_c_an_uncertain_figure() -> None:
    found = simulated([[0, 0], [0, 1]], AnyWeights(2), low=[[0, 0], [0, 1]], high=[[1, 0], [0, 1]])

    assert_close(found.first, [1 - math.log(2), math.log(2)])


def test_case_d_two_uncertain_figures_that_overlap() -> None:
    found = simulated([[0], [0.5]], AnyWeights(1), low=[[0], [0.5]], high=[[1], [1]])

    assert_close(found.first, [1 / 4, 3 / 4])
