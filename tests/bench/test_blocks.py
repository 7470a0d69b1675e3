"""Sums over blocks of a ride."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.blocks import block_length, jackknife, split


def three_with_gaps() -> np.ndarray:
    series = 200.0 + 20.0 * np.random.default_rng(11).standard_normal((3, 107))
    series[1, 20:41] = np.nan
    series[2, 60] = np.nan
    return series


def test_the_whole_is_what_numpy_finds() -> None:
    series = three_with_gaps()
    here = series[:, ~np.isnan(series).any(axis=0)]
    blocks = split(series, 10)
    np.testing.assert_allclose(blocks.whole().means()[0], here.mean(axis=1))
    np.testing.assert_allclose(blocks.whole().covariances()[0], np.cov(here))
    np.testing.assert_allclose(blocks.whole().covariances(0)[0], np.cov(here, ddof=0))


def test_a_block_left_out_is_left_out() -> None:
    series = three_with_gaps()
    blocks = split(series, 10)
    assert blocks.count == 9  # of eleven, two lie in the gap
    rest = series[:, 10:]
    rest = rest[:, ~np.isnan(rest).any(axis=0)]
    np.testing.assert_allclose(blocks.one_left_out().means()[0], rest.mean(axis=1))
    np.testing.assert_allclose(blocks.one_left_out().covariances()[0], np.cov(rest))


def test_draws_are_those_of_the_seed_and_count_every_block_once_on_average() -> None:
    blocks = split(three_with_gaps(), 10)
    drawn, again, other = (blocks.drawn(4000, seed) for seed in (5, 5, 6))
    np.testing.assert_array_equal(drawn.products, again.products)
    assert not np.array_equal(drawn.sums, other.sums)
    np.testing.assert_allclose(drawn.counts.mean(), blocks.whole().counts[0], rtol=0.01)
    np.testing.assert_allclose(drawn.means().mean(axis=0), blocks.whole().means()[0], atol=0.3)


def test_a_draw_is_made_of_whole_blocks() -> None:
    blocks = split([[1.0, 2.0, 30.0, 40.0], [1.0, 1.0, 2.0, 2.0]], 2)
    means = {tuple(row) for row in blocks.drawn(50, 1).means().round(9).tolist()}
    assert means == {(1.5, 1.0), (35.0, 2.0), (18.25, 1.5)}


@pytest.mark.parametrize(("series", "length"), [([[1.0, 2.0]], 1), ([1.0, 2.0], 1), ([[1.0], [2.0]], 0)])
def test_what_cannot_be_cut_is_refused(series: list[object], length: int) -> None:
    with pytest.raises(ValueError, match="at least two rows, a meter each"):
        split(series, length)


def test_meters_that_never_read_together_are_refused() -> None:
    with pytest.raises(ValueError, match="fewer than two seconds"):
        split([[1.0, np.nan, 3.0], [np.nan, 2.0, 3.0]], 1)


def test_blocks_are_longer_where_errors_hang_together_longer() -> None:
    rng, power = np.random.default_rng(12), stepped_power(3600)
    lengths = []
    for phi in (0.0, 0.5, 0.9):
        noise = autoregressive(rng, 2, 3600, phi, 5.0)
        found = block_length(power + noise)
        assert found is not None
        lengths.append(found)
    assert lengths[0] == 9  # 3600 s in 400 blocks
    assert lengths[0] < lengths[1] < lengths[2]
    assert 60 <= lengths[2] <= 160  # five times 19


def test_power_and_scale_do_not_lengthen_the_blocks() -> None:
    power = stepped_power(3600)
    noise = np.random.default_rng(13).standard_normal((2, 3600))
    assert block_length([power + noise[0], 1.05 * power + noise[1]]) == 9


def test_a_ride_too_short_for_blocks_has_no_length() -> None:
    assert block_length(np.ones((2, 19))) is None
    power, drift = stepped_power(100), np.cumsum(np.random.default_rng(34).standard_normal(100))
    assert block_length([power + drift, power]) is None
    assert block_length(np.ones((2, 100))) == 5  # one power throughout, and no error


def test_a_long_ride_has_400_blocks_at_most() -> None:
    noise = np.random.default_rng(35).standard_normal((2, 18_000))
    assert block_length(noise) == 45


def test_the_jackknife_of_a_mean_is_its_standard_error() -> None:
    readings = np.random.default_rng(14).standard_normal(30)
    left_out = np.array([np.delete(readings, i).mean() for i in range(30)])
    blocks = split([readings, readings], 1, independent=True)
    found = jackknife(readings.mean(), left_out, blocks)
    assert (found.high - found.value) / 2.045229642132703 == pytest.approx(readings.std(ddof=1) / 30**0.5)


def test_blocks_of_unlike_size_are_weighed_by_size() -> None:
    """The formula of Busing, Meijer and van der Leeden, term by term."""
    readings = np.random.default_rng(15).standard_normal(25)
    cuts = [slice(0, 10), slice(10, 20), slice(20, 25)]
    blocks = split([readings, readings], 10, independent=True)
    left_out = np.array([np.delete(readings, cut).mean() for cut in cuts])
    whole, h = readings.mean(), np.array([2.5, 2.5, 5.0])
    centre = 3 * whole - sum((1 - 1 / h[j]) * left_out[j] for j in range(3))
    variance = sum((h[j] * whole - (h[j] - 1) * left_out[j] - centre) ** 2 / (h[j] - 1) for j in range(3)) / 3
    found = jackknife(whole, left_out, blocks)
    assert found.high - whole == pytest.approx(4.302652729749462 * variance**0.5)


def test_the_ends_of_blocks_widen_the_interval() -> None:
    readings = np.arange(20.0)
    strangers, neighbours = (split([readings] * 2, 5, independent=each) for each in (True, False))
    left_out = strangers.one_left_out().means()[:, 0]
    plain, wide = (jackknife(9.5, left_out, blocks) for blocks in (strangers, neighbours))
    assert (wide.high - 9.5) / (plain.high - 9.5) == pytest.approx(0.9**-0.5)


@pytest.mark.parametrize(("seconds", "length"), [(59, None), (60, 5)])
def test_twelve_blocks_are_the_least(seconds: int, length: int | None) -> None:
    assert block_length(np.ones((2, seconds))) == length
