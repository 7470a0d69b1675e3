"""Sessions together: each counts once, and a minute of coasting has no percent."""

import numpy as np
import pytest

from bench.meters import autoregressive
from spindlewise.bench.session_record import change_along, minute_differences_pct, session_record


def test_minutes_are_in_percent_of_the_second() -> None:
    first, second = np.full(180, 204.0), np.full(180, 200.0)
    first[60:120], second[60:120] = 99.0, 100.0
    assert minute_differences_pct(first, second).tolist() == pytest.approx([2.0, -1.0, 2.0])
    assert minute_differences_pct(second, first)[0] == pytest.approx(-100 * 4 / 204)


def test_what_is_left_over_of_a_minute_and_half_empty_minutes_tell_nothing() -> None:
    first, second = np.full(200, 204.0), np.full(200, 200.0)
    first[60:91] = np.nan
    second[120:150] = 0.0
    assert len(minute_differences_pct(first, second)) == 2
    assert len(minute_differences_pct(first[:59], second[:59])) == 0


def test_zeros_of_either_do_not_move_a_minute() -> None:
    first, second = np.full(60, 204.0), np.full(60, 200.0)
    first[:20] = 0.0
    assert minute_differences_pct(first, second).tolist() == pytest.approx([2.0])


def test_the_mean_over_sessions_with_its_plus_minus() -> None:
    found = session_record([1.1, 0.6, 0.9], [1.3, 1.2, 1.4])
    assert found is not None
    assert found.count == 3
    assert found.bias.pct == pytest.approx(2.6 / 3)
    assert found.bias.plus_minus_pct == pytest.approx(2 * np.std([1.1, 0.6, 0.9], ddof=1) / np.sqrt(3))
    assert found.spread.pct == pytest.approx(np.sqrt((1.69 + 1.44 + 1.96) / 3))
    assert found.spread.plus_minus_pct == 0.2


def test_two_sessions_are_not_enough() -> None:
    assert session_record([0.5, 0.6], [1.0, 1.0]) is None
    assert session_record([], []) is None


def test_lists_that_do_not_fit_are_refused() -> None:
    with pytest.raises(ValueError, match="one of each a session"):
        session_record([0.5, 0.6, 0.7], [1.0, 1.0])
    with pytest.raises(ValueError, match="all finite"):
        session_record([0.5, 0.6, np.nan], [1.0, 1.0, 1.0])
    with pytest.raises(ValueError, match="one of each a session"):
        change_along([0.0], [1.0, 2.0])


def test_a_known_drift_is_found_and_none_is_claimed_from_two_places() -> None:
    at = np.array([0.0, 0.4, 1.0, 1.1, 4.0, 8.8, 9.0])
    noise = np.random.default_rng(9).normal(0.0, 0.1, len(at))
    found = change_along(at, 0.2 + 0.15 * at + noise)
    assert found is not None
    assert found.holds(0.15)
    assert not found.holds(0.0)
    assert change_along([1.0, 1.0, 1.0], [0.0, 0.1, 0.2]) is None
    assert change_along([0.0, 9.0], [0.0, 1.0]) is None


def test_the_interval_of_a_drift_holds_none_in_95_of_100_series_without_one() -> None:
    random = np.random.default_rng(20260314)
    held = sum(change_along(range(6), random.normal(0, 0.3, 6)).holds(0.0) for _ in range(2000))  # type: ignore[union-attr]
    assert 0.93 * 2000 <= held <= 0.97 * 2000


def test_a_constant_scale_has_no_spread_over_minutes() -> None:
    power = 200.0 + autoregressive(np.random.default_rng(3), 1, 1200, 0.9, 40.0)[0]
    assert np.std(minute_differences_pct(1.02 * power, power)) < 1e-9
