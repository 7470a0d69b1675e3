"""Correlations at every lag, and block by block."""

import numpy as np
import pytest

from spindlewise.bench.correlation import block_sums, correlation_curve, correlations, shared_seconds


def rows_with_gaps() -> tuple[np.ndarray, np.ndarray]:
    random = np.random.default_rng(2)
    a, b = random.standard_normal(80), random.standard_normal(80)
    a[random.random(80) < 0.2] = np.nan
    b[random.random(80) < 0.3] = np.nan
    return a, b


def laid_by_hand(a: np.ndarray, b: np.ndarray, lag: int) -> np.ndarray:
    pairs = [(a[t], b[t + lag]) for t in range(len(a)) if 0 <= t + lag < len(a)]
    return np.array([pair for pair in pairs if np.isfinite(pair).all()]).T


def test_the_curve_is_that_of_a_plain_loop():
    """The naive twin of the correlation by Fourier transform."""
    a, b = rows_with_gaps()
    curve = correlation_curve(a, b, 10)
    for k in range(-10, 11):
        x, y = laid_by_hand(a, b, k)
        assert curve[k + 10] == pytest.approx(x @ y / np.sqrt((x @ x) * (y @ y)), abs=1e-12)


def test_the_curve_says_nothing_of_fewer_than_ten_seconds():
    assert np.isnan(correlation_curve(np.ones(9), np.ones(9), 2)).all()
    assert np.isnan(correlation_curve(np.empty(0), np.empty(0), 2)).all()


@pytest.mark.parametrize("lag", [-7, 0, 3])
def test_the_blocks_add_up_to_the_curve(lag):
    a, b = rows_with_gaps()
    sums = block_sums(a, b, [lag, 1], 5)
    assert sums.shape == (3, 2, 5)
    x, y = laid_by_hand(a, b, lag)
    np.testing.assert_allclose(sums[:, 0].sum(axis=1), [x @ y, x @ x, y @ y])
    assert correlations(sums.sum(axis=2))[0] == pytest.approx(correlation_curve(a, b, 10)[lag + 10])
    assert shared_seconds(a, b, lag) == len(x)


def test_swapping_the_two_and_the_lag_gives_the_same_blocks():
    a, b = rows_with_gaps()
    there, back = block_sums(a, b, [4, -2], 6), block_sums(b, a, [-4, 2], 6)
    np.testing.assert_array_equal(there, back[[0, 2, 1]])


def test_a_block_in_which_nothing_moves_correlates_with_nothing():
    still = np.zeros(40)
    assert correlations(block_sums(still, np.arange(40.0), [0], 4)).tolist() == [[0.0] * 4]
