"""Laws of the bench: what swapping, scaling and shifting must and must not change."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.bench.agreement import agreement
from spindlewise.bench.bands import power_bands
from spindlewise.bench.collocation import consensus, grubbs_variances
from spindlewise.bench.concordance import concordance
from spindlewise.bench.conformity import Claim, conformity
from spindlewise.bench.deming import deming
from spindlewise.bench.estimate import FloatArray
from spindlewise.bench.independence import independence
from spindlewise.bench.mean_max import mean_maximal
from spindlewise.bench.running_time import Run, running_time
from spindlewise.bench.weighing import Scale, WeightBasis, weigh

quick = settings(deadline=None, max_examples=60)
seeds = st.integers(0, 10_000)


def ride(seed: int, meters: int = 2, seconds: int = 240) -> FloatArray:
    rng = np.random.default_rng(seed)
    power = rng.uniform(90, 320, 6).repeat(seconds // 6)
    noise = rng.standard_normal((meters, seconds)) * rng.uniform(1, 8, (meters, 1))
    series = power * rng.uniform(0.95, 1.05, (meters, 1)) + noise
    series[0, rng.integers(0, seconds, 5)] = np.nan
    return np.asarray(series)


@quick
@given(seeds)
def test_swapping_the_meters_flips_the_sign_and_nothing_else(seed: int) -> None:
    one, two = ride(seed)
    there = agreement(one, two, names=("A", "B"), percent_of="mean of both")
    back = agreement(two, one, names=("B", "A"), percent_of="mean of both")
    assert back.mean_difference.value == pytest.approx(-there.mean_difference.value)
    assert back.mean_difference.low == pytest.approx(-there.mean_difference.high)
    assert back.limits.lower.value == pytest.approx(-there.limits.upper.value)
    assert back.limits.upper.high == pytest.approx(-there.limits.lower.low)
    assert there.slope is not None
    assert back.slope is not None
    assert back.slope.slope.value == pytest.approx(-there.slope.slope.value, abs=1e-12)
    assert there.ratio is not None
    assert back.ratio is not None
    assert back.ratio.ratio.value * there.ratio.ratio.value == pytest.approx(1.0)
    assert there.difference_pct is not None
    assert back.difference_pct is not None
    assert back.difference_pct.value == pytest.approx(-there.difference_pct.value)


@quick
@given(seeds, st.floats(0.1, 10.0))
def test_another_unit_scales_watts_and_leaves_percent(seed: int, factor: float) -> None:
    one, two = ride(seed)
    plain = agreement(one, two, names=("A", "B"), percent_of="B")
    scaled = agreement(one * factor, two * factor, names=("A", "B"), percent_of="B")
    assert scaled.limits.sd == pytest.approx(factor * plain.limits.sd)
    assert plain.difference_pct is not None
    assert scaled.difference_pct is not None
    assert scaled.difference_pct.low == pytest.approx(plain.difference_pct.low, rel=1e-6, abs=1e-9)


@quick
@given(seeds, st.floats(-500, 500), st.booleans())
def test_a_series_is_worth_the_same_wherever_its_mean_lies_and_which_way_time_runs(
    seed: int, shift: float, backwards: bool
) -> None:
    series = np.cumsum(np.random.default_rng(seed).standard_normal(150)) % 7.0
    moved = series[::-1] + shift if backwards else series + shift
    assert independence(moved).time == pytest.approx(independence(series).time, rel=1e-6)


@quick
@given(seeds)
def test_concordance_knows_no_order_and_never_exceeds_the_correlation(seed: int) -> None:
    one, two = ride(seed)
    there, back = concordance(one, two), concordance(two, one)
    assert there is not None
    assert back is not None
    assert there.value == pytest.approx(back.value)
    assert abs(there.value) <= abs(there.precision) + 1e-12
    assert 0.0 < there.accuracy <= 1.0 + 1e-12


@quick
@given(seeds, st.floats(0.2, 5.0))
def test_deming_the_other_way_round_is_the_same_line(seed: int, ratio: float) -> None:
    one, two = ride(seed)
    there, back = deming(one, two, error_ratio=ratio), deming(two, one, error_ratio=1 / ratio)
    assert there is not None
    assert back is not None
    assert there.scale * back.scale == pytest.approx(1.0)


@quick
@given(seeds, st.integers(3, 5), st.floats(0.5, 2.0))
def test_no_meter_is_special_to_grubbs_and_the_consensus(seed: int, meters: int, factor: float) -> None:
    covariances = np.cov(ride(seed, meters)[:, 10:200][:, ~np.isnan(ride(seed, meters)[0, 10:200])])
    order = np.random.default_rng(seed).permutation(meters)
    shuffled = covariances[np.ix_(order, order)]
    np.testing.assert_allclose(grubbs_variances(shuffled), grubbs_variances(covariances)[order], atol=1e-6)
    scale, own = consensus(covariances)
    np.testing.assert_allclose(consensus(shuffled)[0], scale[order])
    all_louder, own_louder = consensus(covariances * factor**2)
    np.testing.assert_allclose(all_louder, scale)
    np.testing.assert_allclose(own_louder, own * factor**2, rtol=1e-6, atol=1e-6)
    assert np.prod(scale) == pytest.approx(1.0)


@quick
@given(seeds)
def test_every_compared_second_is_in_one_band(seed: int) -> None:
    one, two = ride(seed)
    bands = power_bands(one, two, (0, 130, 180, 240, 500), names=("A", "B"), percent_of="B")
    assert sum(band.count for band in bands) == np.count_nonzero(~np.isnan(one + two))


@quick
@given(st.lists(st.floats(0, 1500), min_size=1, max_size=60), st.integers(1, 8), st.integers(1, 8))
def test_twice_as_long_is_never_harder(power: list[float], duration: int, times: int) -> None:
    short, long = mean_maximal(power, (duration, duration * times))
    if long.best_w is not None:
        assert short.best_w is not None
        assert long.best_w <= short.best_w + 1e-9


@quick
@given(
    st.floats(300, 500), st.floats(0, 20), st.floats(0, 20), st.sampled_from(["at most", "at least", "about"])
)
def test_more_doubt_never_proves_anything(measured: float, doubt: float, more: float, sense: str) -> None:
    claim = Claim(400.0, {}, 5.0, sense)  # type: ignore[arg-type]
    less, greater = (conformity(measured, u, {}, claim).verdict for u in (doubt, doubt + more))
    assert greater in (less, "cannot tell")


@quick
@given(st.lists(st.integers(300, 320), min_size=2, max_size=8), st.floats(0, 3))
def test_a_certificate_or_scatter_only_adds_doubt(readings: list[int], calibration_g: float) -> None:
    basis = WeightBasis("pair", "in", "off")
    plain = weigh(readings, scale=Scale("s", 1.0), basis=basis)
    known = weigh(readings, scale=Scale("s", 1.0, calibration_g=calibration_g), basis=basis)
    assert known.expanded_g >= plain.expanded_g >= 2 / 12**0.5 - 1e-12
    with_t = weigh(readings, scale=Scale("s", 1.0), basis=basis, coverage="t")
    assert with_t.expanded_g >= plain.expanded_g - 1e-4


@settings(deadline=None, max_examples=15)
@given(st.lists(st.floats(30, 90), min_size=3, max_size=6, unique=True), st.floats(1.05, 1.4))
def test_a_run_that_goes_on_never_shortens_the_battery(hours: list[float], longer: float) -> None:
    ended = [Run(each, True) for each in hours]
    plain = running_time(ended)
    with_one = running_time([*ended, Run(max(hours) * longer, False)])
    if plain.says == with_one.says == "estimated":
        assert with_one.hours >= plain.hours * (1 - 1e-3)
    assert with_one.at_least_h > plain.at_least_h
