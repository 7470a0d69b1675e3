"""Limits of agreement; the published figures stand in tests/references."""

import numpy as np
import pytest

from bench.meters import autoregressive
from spindlewise.bench.limits import limits_of_agreement, ratio_limits


def test_the_two_rules_for_the_standard_error_are_named() -> None:
    differences = [1.0, -1.0, 2.0, -2.0, 0.0]
    old = limits_of_agreement(differences, error_rule="1986", independent=True)
    new = limits_of_agreement(differences, independent=True)
    assert (old.error_rule, new.error_rule) == ("1986", "1999")
    assert old.standard_error == pytest.approx((3 * 2.5 / 5) ** 0.5)
    assert new.standard_error == pytest.approx((2.5 * (1 / 5 + 1.96**2 / 8)) ** 0.5)


@pytest.mark.parametrize(
    "wrong", [{"error_rule": "1990"}, {"multiplier": 0.0}, {"multiplier": float("inf")}, {"multiplier": -2.0}]
)
def test_an_unknown_rule_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(ValueError, match="one of 1986, 1999 and the multiplier is above 0"):
        limits_of_agreement([1.0, 2.0, 3.0], independent=True, **wrong)  # type: ignore[arg-type]


def test_neighbours_widen_the_intervals_of_the_limits_too() -> None:
    ride = autoregressive(np.random.default_rng(8), 1, 3600, 0.9, 5.0)[0]
    aware, unaware = limits_of_agreement(ride), limits_of_agreement(ride, independent=True)
    assert aware.standard_error > 2.5 * unaware.standard_error
    assert aware.sd == pytest.approx(unaware.sd, rel=0.01)
    older = limits_of_agreement(ride, error_rule="1986")
    assert older.standard_error > aware.standard_error  # it takes the smaller of the two effective numbers


def test_ratio_limits_leave_out_zeros_and_keep_time() -> None:
    first, second = np.full(40, 110.0), np.full(40, 100.0)
    first[5] = second[7] = 0.0
    first[9] = np.nan
    found = ratio_limits(first, second)
    assert found.count == 37
    assert found.ratio.value == pytest.approx(1.1)
    assert found.lower.value == pytest.approx(found.upper.value)


def test_95_of_100_intervals_hold_the_true_limit() -> None:
    rides = 3.0 + autoregressive(np.random.default_rng(23), 1600, 1800, 0.8, 6.0)
    found = [limits_of_agreement(ride) for ride in rides]
    held = [each.lower.holds(3.0 - 1.96 * 6.0) for each in found] + [
        each.upper.holds(3.0 + 1.96 * 6.0) for each in found
    ]
    assert 0.93 <= sum(held) / 3200 <= 0.97
