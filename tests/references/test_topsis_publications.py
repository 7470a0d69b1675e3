"""TOPSIS: Hwang and Yoon 1981 (fighter aircraft) and Tzeng and Huang 2011; min-max sums; and a library.

Inputs as transcribed; full digits recomputed. The book rounds the fourth normalised column oddly, so its
printed closeness is held to three digits only.
"""

import numpy as np
import pytest
from pymcdm import methods, normalizations

from spindlewise.decide.other_methods import min_max_sum, topsis

AIRCRAFT = np.array(
    [
        [2.0, 1500, 20000, 5.5, 5, 9],
        [2.5, 2700, 18000, 6.5, 3, 5],
        [1.8, 2000, 21000, 4.5, 7, 7],
        [2.2, 1800, 20000, 5.0, 5, 5],
    ]
)
WEIGHTS = [0.2, 0.1, 0.1, 0.1, 0.2, 0.3]
DIRECTIONS = ["more", "more", "more", "less", "more", "more"]


def test_fighter_aircraft() -> None:
    found = topsis(AIRCRAFT, WEIGHTS, DIRECTIONS)

    assert found == pytest.approx(
        np.array([0.6432770006, 0.2683835677, 0.6135422900, 0.3122910656]), abs=1e-9
    )
    assert found == pytest.approx(np.array([0.643, 0.268, 0.613, 0.312]), abs=1e-3)
    assert (-found).argsort().tolist() == [0, 2, 3, 1]


def test_fighter_aircraft_by_min_max_has_another_first() -> None:
    found = min_max_sum(AIRCRAFT, WEIGHTS, DIRECTIONS)

    assert found == pytest.approx(np.array([0.5738095238, 3 / 10, 71 / 120, 0.3809523810]), abs=1e-9)
    assert found.argmax() == 2


def test_tzeng_and_huang_2011() -> None:
    found = topsis([[5, 8, 4], [7, 6, 8], [8, 8, 6], [7, 4, 6]], [0.3, 0.4, 0.3], ["more"] * 3)

    assert found == pytest.approx(np.array([0.5037196586, 0.658084772, 0.7482486599, 0.3339974369]), abs=1e-9)
    assert found == pytest.approx(np.array([0.5037, 0.6581, 0.7482, 0.3340]), abs=5e-5)


@pytest.mark.parametrize("seed", range(20))
def test_a_general_library_agrees_on_random_tables(seed: int) -> None:
    rng = np.random.default_rng(seed)
    n, m = rng.integers(3, 12), rng.integers(2, 8)
    figures, weights = rng.random((n, m)) * 10.0 ** rng.integers(-1, 4, m), rng.dirichlet(np.ones(m))
    signs = rng.choice([-1, 1], m)
    directions = ["more" if sign > 0 else "less" for sign in signs]

    # its validation warns of a product that leads everywhere, which is none of our concern
    by_topsis = methods.TOPSIS(normalizations.vector_normalization)
    by_sum = methods.WSM(normalizations.minmax_normalization)
    assert topsis(figures, weights, directions) == pytest.approx(
        by_topsis(figures, weights, signs, validation=False), abs=1e-10
    )
    assert min_max_sum(figures, weights, directions) == pytest.approx(
        by_sum(figures, weights, signs, validation=False), abs=1e-10
    )
