"""Laws of reading errors: what mirrors the bike mirrors the error, and a further cause never narrows it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.reception.crank_setting import crank_setting_error
from spindlewise.reception.doubled_side import doubled_error, doubled_error_pct
from spindlewise.reception.shown_balance import shown_balance
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty

shares = st.floats(0, 1)
ranges = st.tuples(shares, shares).map(lambda pair: (min(pair), max(pair)))
percents = st.floats(0, 20)
lengths = st.floats(100, 220)


@settings(deadline=None)
@given(shares)
def test_the_sensor_on_the_other_side_errs_as_much_the_other_way(share: float) -> None:
    assert doubled_error_pct(share, "left") == -doubled_error_pct(share, "right")
    assert doubled_error_pct(share, "left") == pytest.approx(doubled_error_pct(1 - share, "right"), abs=1e-9)


@settings(deadline=None)
@given(ranges)
def test_so_does_a_whole_range(share: tuple[float, float]) -> None:
    left, right = doubled_error(share, "left"), doubled_error(share, "right")

    assert (left.low_pct, left.high_pct) == (-right.high_pct, -right.low_pct)
    assert left.expected_pct == -right.expected_pct
    assert left.standard_pct == right.standard_pct
    swapped = {"reads low": "reads high", "reads high": "reads low"}
    assert right.sign == swapped.get(left.sign, left.sign)


@settings(deadline=None)
@given(ranges, st.floats(1, 1000))
def test_both_sides_doubled_average_to_the_truth(share: tuple[float, float], watts: float) -> None:
    left, right = doubled_error(share, "left", watts), doubled_error(share, "right", watts)

    assert left.expected_w is not None
    assert right.expected_w is not None
    assert left.expected_w + right.expected_w == 0
    unknown = doubled_error(share, "unknown", watts)
    assert unknown.low_pct == min(left.low_pct, right.low_pct) == -unknown.high_pct


@settings(deadline=None)
@given(ranges, percents)
def test_swapping_the_side_mirrors_the_error_and_keeps_its_size(
    share: tuple[float, float], tolerance: float
) -> None:
    left, right = (
        reading_uncertainty("one side doubled", tolerance_pct=tolerance, doubled=doubled_error(share, side))
        for side in ("left", "right")
    )

    assert left.low_error_pct == -right.high_error_pct  # type: ignore[operator]
    assert left.expanded_pct == right.expanded_pct
    assert left.expanded_low_pct <= left.expanded_pct <= left.expanded_high_pct  # type: ignore[operator]


@settings(deadline=None)
@given(ranges, percents)
def test_the_figure_is_the_farther_end_of_the_interval(share: tuple[float, float], tolerance: float) -> None:
    budget = reading_uncertainty("one side doubled", tolerance_pct=tolerance, doubled=doubled_error(share))

    ends = (budget.low_error_pct, budget.high_error_pct)
    assert budget.expanded_pct == max(abs(end) for end in ends)  # type: ignore[arg-type]


@settings(deadline=None)
@given(percents, percents, percents, ranges)
def test_a_further_cause_never_narrows_the_spread(
    tolerance: float, more: float, drift: float, share: tuple[float, float]
) -> None:
    def combined(mode: str, tolerance_pct: float, **further: object) -> float:
        found = reading_uncertainty(mode, tolerance_pct=tolerance_pct, **further)  # type: ignore[arg-type]
        assert found.combined_pct is not None
        return found.combined_pct

    alone = combined("both sides", tolerance)
    slack = 1e-12 * (1 + alone)
    assert combined("both sides", tolerance + more) >= alone - slack
    assert combined("both sides", tolerance, temperature_pct=drift) >= alone - slack
    assert combined("one side doubled", tolerance, doubled=doubled_error(share)) >= alone - slack


@settings(deadline=None)
@given(st.floats(-10, 10), percents, percents)
def test_the_sign_of_the_bench_bias_does_not_change_the_size(
    bias: float, spread: float, known_to: float
) -> None:
    seen = [
        reading_uncertainty("both sides", tolerance_pct=1, bench=BenchEvidence(sign * bias, spread, known_to))
        for sign in (1, -1)
    ]

    assert seen[0].expanded_pct == seen[1].expanded_pct
    assert seen[0].low_error_pct == -seen[1].high_error_pct  # type: ignore[operator]


@settings(deadline=None)
@given(percents, percents, st.floats(0.01, 10))
def test_percent_or_per_mille_tell_the_same(tolerance: float, drift: float, factor: float) -> None:
    small = reading_uncertainty("both sides", tolerance_pct=tolerance, temperature_pct=drift)
    scaled = reading_uncertainty(
        "both sides", tolerance_pct=factor * tolerance, temperature_pct=factor * drift
    )

    assert scaled.expanded_pct == pytest.approx(factor * small.expanded_pct, abs=1e-12)  # type: ignore[operator]


@settings(deadline=None)
@given(lengths, lengths)
def test_exchanging_set_and_ridden_undoes_the_error(set_mm: float, ridden_mm: float) -> None:
    there = crank_setting_error(set_mm, ridden_mm).error_pct
    back = crank_setting_error(ridden_mm, set_mm).error_pct

    assert (1 + there / 100) * (1 + back / 100) == pytest.approx(1)
    assert math.copysign(1, there) == (1 if set_mm >= ridden_mm else -1)


@settings(deadline=None)
@given(shares, st.sampled_from(["ANT+", "Bluetooth"]))
def test_what_is_shown_stands_for_a_range_that_holds_the_truth(share: float, protocol: str) -> None:
    shown = shown_balance(share, protocol)

    assert shown.low - 1e-9 <= share <= shown.high + 1e-9
    assert shown_balance(shown.left_share, protocol).left_share == shown.left_share
