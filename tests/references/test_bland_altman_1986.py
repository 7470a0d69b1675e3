"""Bland and Altman 1986, Statistical methods for assessing agreement, Lancet i:307-310.

Table I: peak expiratory flow of 17 people by two kinds of flow meter, each read twice. The raw data were seen
in independent transcriptions; what the paper prints is from memory, except the lower limit's interval. The
paper rounds mean and standard deviation before it combines them, hence 0.2 of tolerance on printed figures.
"""

import numpy as np
import pytest
from scipy import stats

from spindlewise.bench.agreement import agreement
from spindlewise.bench.limits import limits_of_agreement, ratio_limits
from spindlewise.bench.proportional_bias import proportional_bias
from spindlewise.bench.repeatability import corrected_sd, repeatability

LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
LARGE_AGAIN = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
MINI_AGAIN = [525, 415, 508, 444, 500, 625, 460, 390, 642, 432, 420, 605, 227, 467, 268, 370, 443]
DIFFERENCES = np.subtract(LARGE, MINI)


def test_mean_difference_and_its_interval() -> None:
    found = limits_of_agreement(DIFFERENCES, independent=True)
    assert found.mean.value == pytest.approx(-36 / 17, abs=1e-12)
    assert found.sd == pytest.approx(38.76512987360738, abs=1e-10)
    assert (found.mean.low, found.mean.high) == pytest.approx(
        (-22.04883769664517, 17.81354357899811), abs=1e-9
    )


def test_the_figures_printed_in_the_paper() -> None:
    found = limits_of_agreement(DIFFERENCES, multiplier=2.0, error_rule="1986", independent=True)
    ours = (found.mean.value, found.sd, found.lower.value, found.upper.value, found.standard_error)
    assert ours == pytest.approx((-2.1, 38.8, -79.7, 75.5, 16.3), abs=0.2)
    assert (found.mean.low, found.mean.high) == pytest.approx((-22.0, 17.8), abs=0.2)
    assert (found.lower.low, found.lower.high) == pytest.approx((-114.3, -45.1), abs=0.2)
    assert (found.upper.low, found.upper.high) == pytest.approx((40.9, 110.1), abs=0.2)


def test_two_standard_deviations_unrounded() -> None:
    found = limits_of_agreement(DIFFERENCES, multiplier=2.0, error_rule="1986", independent=True)
    assert (found.lower.value, found.upper.value) == pytest.approx((-79.64790680603829, 75.41261268839122))
    assert found.standard_error == pytest.approx(16.284611795031495, abs=1e-9)
    assert (found.lower.low, found.lower.high) == pytest.approx((-114.1697416460865, -45.12607196599008))
    assert (found.upper.low, found.upper.high) == pytest.approx((40.890777848343006, 109.93444752843943))


def test_196_by_the_rule_of_1986_and_that_of_1999() -> None:
    old = limits_of_agreement(DIFFERENCES, error_rule="1986", independent=True)
    new = limits_of_agreement(DIFFERENCES, error_rule="1999", independent=True)
    assert (old.lower.value, old.upper.value) == pytest.approx((-78.097301611094, 73.86200749344692))
    assert (old.lower.low, old.lower.high) == pytest.approx((-112.61913645114221, -43.57546677104578))
    assert (old.upper.low, old.upper.high) == pytest.approx((39.34017265339871, 108.38384233349514))
    assert new.standard_error == pytest.approx(16.39510798471452, abs=1e-9)
    assert (new.lower.low, new.lower.high) == pytest.approx((-112.85337790919502, -43.34122531299298))
    assert (new.upper.low, new.upper.high) == pytest.approx((39.10593119534591, 108.61808379154795))


def test_the_exact_normal_quantile() -> None:
    found = limits_of_agreement(DIFFERENCES, multiplier=1.959963984540054, independent=True)
    assert (found.lower.value, found.upper.value) == pytest.approx((-78.09590546711173, 73.86061134946466))


def test_ratio_limits() -> None:
    found = ratio_limits(LARGE, MINI, independent=True)
    assert (found.ratio.value, found.lower.value, found.upper.value) == pytest.approx(
        (0.9882846257676574, 0.7782674288598955, 1.2549754304372234)
    )


def test_the_slope_is_that_of_scipy() -> None:
    found = proportional_bias(LARGE, MINI, independent=True)
    line = stats.linregress(np.add(LARGE, MINI) / 2, DIFFERENCES)
    assert found is not None
    assert (found.slope.value, found.intercept.value) == pytest.approx(
        (0.02868744515254922, -15.067497300038983)
    )
    assert found.slope.high - found.slope.value == pytest.approx(stats.t.ppf(0.975, 15) * line.stderr)
    assert found.intercept.high - found.intercept.value == pytest.approx(
        stats.t.ppf(0.975, 15) * line.intercept_stderr
    )
    assert not found.shows
    assert not found.percent_changes


def test_the_mean_interval_is_that_of_the_paired_t_test() -> None:
    found = agreement(LARGE, MINI, names=("large", "mini"), percent_of="large", independent=True)
    interval = stats.ttest_rel(LARGE, MINI).confidence_interval()
    assert (found.mean_difference.low, found.mean_difference.high) == pytest.approx(tuple(interval))
    assert found.difference_pct is not None
    assert found.difference_pct.value == pytest.approx(100 * -36 / sum(LARGE))


def test_repeatability_of_each_meter() -> None:
    large, mini = repeatability(LARGE, LARGE_AGAIN), repeatability(MINI, MINI_AGAIN)
    assert (large.sd, mini.sd) == pytest.approx((21.64689897639192, 28.158166718399414), abs=1e-9)
    assert (large.coefficient, mini.coefficient) == pytest.approx((43.29379795278384, 56.31633343679883))
    assert (large.sd, mini.sd) == pytest.approx((21.6, 28.2), abs=0.05)  # as printed


def test_the_spread_of_single_readings_from_averages_of_two() -> None:
    found = corrected_sd((LARGE, LARGE_AGAIN), (MINI, MINI_AGAIN))
    assert found == pytest.approx(37.65477862026514, abs=1e-9)
    assert found == pytest.approx(37.7, abs=0.05)  # as printed
