"""Osmani 2022: how uneven recreational riders are.

Osmani F (2022). Relation between dissymmetry of the lower limbs and the asymmetry index in pedalling of
non-professional cyclists. MLS Sport Research 2(1):1-17. 23 riders, asymmetry index 4.086 %, right against
left 50.56 to 49.44 (abstract seen; formula of the index not seen).
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from spindlewise.reception.doubled_side import POPULATION_ASYMMETRY_PCT, doubled_error, doubled_error_pct


def index_pct(left_share: float) -> float:
    """Difference of the legs over their mean, in percent, without sign."""
    right_share = 1 - left_share
    return 100 * abs(right_share - left_share) / ((right_share + left_share) / 2)


def test_the_groups_own_split_is_not_the_mean_index() -> None:
    assert index_pct(0.4944) == pytest.approx(2.24)
    assert index_pct(0.4944) < POPULATION_ASYMMETRY_PCT == 4.086


@pytest.mark.parametrize("left", [0.45, 0.4898, 0.5, 0.53])
def test_the_index_is_twice_the_doubled_error(left: float) -> None:
    assert index_pct(left) == pytest.approx(2 * abs(doubled_error_pct(left)))


def test_referring_to_the_stronger_leg_changes_little() -> None:
    stronger = 1 / (2 - POPULATION_ASYMMETRY_PCT / 100)

    other_reading = doubled_error_pct(stronger)

    assert other_reading / (POPULATION_ASYMMETRY_PCT / 2) == pytest.approx(1.02, abs=0.005)


def test_riders_drawn_from_the_population_have_the_published_mean_index() -> None:
    error = doubled_error(None)
    n = 200_000
    left = 0.5 + np.random.default_rng(2022).normal(0, error.standard_pct / 200, n)

    indices = 200 * np.abs(1 - 2 * left)

    assert indices.mean() == pytest.approx(POPULATION_ASYMMETRY_PCT, abs=4 * indices.std() / math.sqrt(n))
    doubled = 100 * (2 * left - 1)
    assert ((error.low_pct <= doubled) & (doubled <= error.high_pct)).mean() == pytest.approx(0.95, abs=0.002)
