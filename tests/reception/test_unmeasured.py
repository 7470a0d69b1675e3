"""What nobody has measured counts by what is plausible of it."""

from __future__ import annotations

import math

import pytest

from spindlewise.reception.doubled_side import doubled_error
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty
from spindlewise.reception.unmeasured import Plausible, Unmeasured, not_measured

ROOT_3 = math.sqrt(3)
SPANS = Unmeasured(temperature=Plausible(0.3, 1.2), bench_spread=Plausible(0.6, 1.5))


def test_it_counts_at_its_worst_and_keeps_its_best_beside() -> None:
    cause = not_measured("temperature", Plausible(0.3, 1.2), "10 degrees", ROOT_3)

    assert (cause.standard_pct, cause.least_pct) == (pytest.approx(1.2 / ROOT_3), pytest.approx(0.3 / ROOT_3))
    assert (cause.kind, cause.bias_pct) == ("not measured", 0.0)
    assert cause.note == "10 degrees: 0.3 to 1.2 % is plausible, 1.2 % counts"


@pytest.mark.parametrize(("low", "high"), [(-0.1, 1.0), (1.0, 0.9), (0.0, math.inf), (math.nan, 1.0)])
def test_a_span_that_is_none_is_refused(low: float, high: float) -> None:
    with pytest.raises(
        ValueError, match=r"^plausible from \S+ to \S+; 0 <= low <= high, both finite, is needed$"
    ):
        Plausible(low, high)


def test_nothing_may_be_plausible_at_all() -> None:
    assert Plausible(0.0, 0.0).over(5) == Plausible(0.0, 0.0)


def test_a_bare_claim_has_no_bench_spread_and_no_drift_measured() -> None:
    budget = reading_uncertainty("both sides", tolerance_pct=1.0, unmeasured=SPANS)

    assert budget.not_measured == ("bench spread", "temperature")
    assert budget.left_out == ()
    assert budget.expanded_pct == pytest.approx(2 * math.sqrt(1 / 3 + 1.5**2 + 1.2**2 / 3))
    assert budget.expanded_low_pct == pytest.approx(2 * math.sqrt(1 / 3 + 0.6**2 + 0.3**2 / 3))
    assert budget.expanded_high_pct == budget.expanded_pct


def test_what_the_bench_has_seen_needs_no_span() -> None:
    seen = reading_uncertainty(
        "both sides", tolerance_pct=1.0, bench=BenchEvidence(0.2, 0.8), temperature_pct=0.5, unmeasured=SPANS
    )

    assert seen.not_measured == ()
    assert seen == reading_uncertainty(
        "both sides", tolerance_pct=1.0, bench=BenchEvidence(0.2, 0.8), temperature_pct=0.5
    )


def test_the_drift_is_in_proportion_to_the_degrees() -> None:
    five = reading_uncertainty(
        "both sides",
        tolerance_pct=None,
        bench=BenchEvidence(0, 0.0),
        temperature_change_c=5,
        unmeasured=SPANS,
    )

    assert five.expanded_pct == pytest.approx(2 * 0.6 / ROOT_3)
    assert five.expanded_low_pct == pytest.approx(2 * 0.15 / ROOT_3)


def test_the_kindest_reading_of_a_doubled_side_has_the_kindest_of_both() -> None:
    budget = reading_uncertainty(
        "one side doubled", tolerance_pct=1.5, doubled=doubled_error((0.47, 0.49), "left"), unmeasured=SPANS
    )

    assert budget.expanded_low_pct == pytest.approx(2 + 2 * math.sqrt(1.5**2 / 3 + 0.6**2 + 0.3**2 / 3))
    assert budget.expanded_high_pct == pytest.approx(6 + 2 * math.sqrt(1.5**2 / 3 + 1.5**2 + 1.2**2 / 3))


def test_without_spans_the_temperature_is_left_out_and_named() -> None:
    assert reading_uncertainty("both sides", tolerance_pct=1.0).left_out == ("temperature",)
