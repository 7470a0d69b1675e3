"""Scale and noise from covariances; Grubbs's chronographs stand in tests/references/test_grubbs_1973.py."""

from itertools import combinations

import numpy as np
import pytest

from spindlewise.bench.collocation import consensus, grubbs_variances

SCALE, NOISE = np.array([0.8, 1.0, 1.1, 1.2, 0.95]), np.array([4.0, 9.0, 1.0, 16.0, 25.0])


@pytest.mark.parametrize("k", [3, 4, 5])
def test_known_scales_and_noises_come_back(k: int) -> None:
    b = SCALE[:k] / np.prod(SCALE[:k]) ** (1 / k)
    scale, variance = consensus(2500.0 * np.outer(b, b) + np.diag(NOISE[:k]))
    np.testing.assert_allclose(scale, b)
    np.testing.assert_allclose(variance, NOISE[:k], rtol=1e-9)


@pytest.mark.parametrize("k", [3, 4, 5])
def test_grubbs_is_the_least_squares_solution_over_all_pairs(k: int) -> None:
    covariances = np.cov(np.random.default_rng(41).standard_normal((k, 30)).cumsum(axis=0))
    pairs = list(combinations(range(k), 2))
    design = np.array([[float(i in pair) for i in range(k)] for pair in pairs])
    apart = [covariances[i, i] + covariances[j, j] - 2 * covariances[i, j] for i, j in pairs]
    np.testing.assert_allclose(grubbs_variances(covariances), np.linalg.lstsq(design, apart, rcond=None)[0])


@pytest.mark.parametrize("k", [3, 4, 5])
def test_consensus_is_the_least_squares_solution_over_all_pairs(k: int) -> None:
    readings = 200 + 50 * np.random.default_rng(42).standard_normal(80)
    covariances = np.cov(readings + 9 * np.random.default_rng(43).standard_normal((k, 80)))
    pairs = list(combinations(range(k), 2))
    design = np.array([[float(i in pair) for i in range(k)] + [1.0] for pair in pairs] + [[1.0] * k + [0.0]])
    logs = [np.log(covariances[pair]) for pair in pairs] + [0.0]
    found = np.linalg.lstsq(design, np.array(logs), rcond=None)[0]
    scale, variance = consensus(covariances)
    np.testing.assert_allclose(np.log(scale), found[:k], atol=1e-9)
    np.testing.assert_allclose(variance, np.diag(covariances) - scale**2 * np.exp(found[k]), rtol=1e-9)


def test_many_tables_at_once_are_each_as_one() -> None:
    tables = np.stack([100.0 + np.diag([1.0, 2.0, 3.0]), 50.0 + np.diag([4.0, 0.5, 2.0])])
    np.testing.assert_allclose(consensus(tables)[0][1], consensus(tables[1])[0])
    np.testing.assert_allclose(grubbs_variances(tables)[1], [4.0, 0.5, 2.0])


def test_noise_too_small_to_be_seen_comes_out_below_zero() -> None:
    table = np.array([[100.0, 101.0, 101.0], [101.0, 110.0, 100.0], [101.0, 100.0, 110.0]])
    assert grubbs_variances(table)[0] == pytest.approx(-2.0)
    assert consensus(table)[1][0] < 0.0


def test_meters_that_do_not_rise_and_fall_together_have_no_scale() -> None:
    table = np.array([[9.0, 1.0, -1.0], [1.0, 9.0, 1.0], [-1.0, 1.0, 9.0]])
    assert all(np.isnan(part).all() for part in consensus(table))


@pytest.mark.parametrize("table", [np.eye(2), np.ones((4, 3))])
def test_two_meters_are_not_enough(table: np.ndarray) -> None:
    for function in (grubbs_variances, consensus):
        with pytest.raises(ValueError, match="a square of at least 3"):
            function(table)
