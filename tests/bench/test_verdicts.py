"""Three verdicts, kept apart."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.agreement import Agreement, agreement
from spindlewise.bench.expected_loss import LossVerdict, expected_loss
from spindlewise.bench.three_meters import three_meters
from spindlewise.bench.verdicts import (
    Verdict,
    agreement_verdict,
    plausibility_verdict,
    quality_verdict,
)

POWER = stepped_power(2400)
NOISE = autoregressive(np.random.default_rng(66), 3, 2400, 0.7, 3.0)


def compared(first: np.ndarray, second: np.ndarray = POWER) -> Agreement:
    return agreement(first, second, names=("pedals", "hub"), percent_of="hub")


def number(verdict: Verdict, name: str) -> float:
    return next(each.value for each in verdict.numbers if each.name == name)


@pytest.mark.parametrize(
    ("scale", "says"),
    [(1.0, "agree"), (1.005, "agree"), (1.04, "differ"), (0.96, "differ"), (1.0141, "cannot tell")],
)
def test_agreement_within_both_tolerances(scale: float, says: str) -> None:
    verdict = agreement_verdict(compared(scale * POWER + NOISE[0]), (1.0, 1.0))
    assert (verdict.subject, verdict.says) == ("agreement", says)
    assert number(verdict, "both tolerances together") == pytest.approx(2**0.5)
    assert number(verdict, "mean difference, percent of hub") == pytest.approx(100 * (scale - 1), abs=0.3)


def test_a_slope_that_averages_out_depends_on_power() -> None:
    middle = POWER.mean()
    verdict = agreement_verdict(compared(middle + 0.9 * (POWER - middle) + NOISE[0]), (1.0, 1.0))
    assert verdict.says == "depends on power"
    assert number(verdict, "slope of the difference") == pytest.approx(-10.5, abs=0.5)
    assert number(verdict, "difference at low power") > 4.0


def test_a_slope_within_the_tolerances_does_no_harm() -> None:
    middle = POWER.mean()
    found = compared(middle + 0.99 * (POWER - middle) + NOISE[0])
    assert found.slope is not None
    assert found.slope.shows
    assert agreement_verdict(found, (1.5, 1.5)).says == "agree"


def test_one_power_has_no_slope_and_still_a_verdict() -> None:
    flat = np.full(900, 200.0)
    assert agreement_verdict(compared(flat + 1.0, flat), (1.0, 1.0)).says == "agree"


def test_without_tolerances_or_power_nobody_can_tell() -> None:
    assert agreement_verdict(compared(POWER + NOISE[0]), None).because == ("a tolerance is not stated",)
    coasting = compared(np.zeros(900), np.zeros(900))
    assert agreement_verdict(coasting, (1.0, 1.0)).because == ("there is no power to compare",)


@pytest.mark.parametrize("tolerances", [(0.0, 1.0), (1.0, -1.0), (float("nan"), 1.0)])
def test_tolerances_that_make_no_sense_are_refused(tolerances: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="both are above 0"):
        agreement_verdict(compared(POWER + NOISE[0]), tolerances)


def test_good_recordings() -> None:
    verdict = quality_verdict(compared(POWER + NOISE[0]), recorded_s=2400, lag_known=True)
    assert (verdict.subject, verdict.says, verdict.because) == ("data quality", "good", ())
    assert number(verdict, "compared") == 2400


def test_usable_recordings_say_what_they_lack() -> None:
    verdict = quality_verdict(
        compared(POWER + NOISE[0]), recorded_s=2600, lag_known=True, missing=("zero offset", "firmware")
    )
    assert verdict.says == "usable"
    assert verdict.because == ("seconds are missing", "not noted: zero offset", "not noted: firmware")
    assert number(verdict, "not compared") == pytest.approx(100 * 200 / 2600)


def test_a_drifting_difference_is_not_good() -> None:
    drift = np.linspace(0.0, 12.0, 2400)
    verdict = quality_verdict(compared(POWER + drift), recorded_s=2400, lag_known=True)
    assert "the difference drifts throughout the ride" in verdict.because
    assert verdict.says == "not enough"
    assert "neighbouring readings hang together for too long" in verdict.because


@pytest.mark.parametrize(
    ("seconds", "options", "because"),
    [
        (2400, {"lag_known": False}, "the lag between the recordings is not known"),
        (2400, {"lag_known": True, "void": "no zero offset"}, "the ride is void: no zero offset"),
        (599, {"lag_known": True}, "fewer than 600 seconds in common"),
    ],
)
def test_not_enough(seconds: int, options: dict[str, object], because: str) -> None:
    found = compared((POWER + NOISE[0])[:seconds], POWER[:seconds])
    verdict = quality_verdict(found, recorded_s=seconds, **options)  # type: ignore[arg-type]
    assert verdict.says == "not enough"
    assert because in verdict.because


def test_more_compared_than_recorded_is_refused() -> None:
    with pytest.raises(ValueError, match="it cannot be more"):
        quality_verdict(compared(POWER + NOISE[0]), recorded_s=2000, lag_known=True)


def loss(hub_w: float, tolerance: float = 0.8) -> LossVerdict:
    return expected_loss(
        250.0, hub_w, loss_pct=(1.5, 3.5), pedals_tolerance_pct=tolerance, hub_tolerance_pct=tolerance
    )


@pytest.mark.parametrize(
    ("found", "says", "because"),
    [
        (loss(244.0), "plausible", ("the loss seen agrees with the loss expected",)),
        (loss(260.0), "implausible", ("the loss seen does not agree with the loss expected",)),
        (
            loss(250.0),
            "implausible",
            (
                "equal averages with a chain between them are a finding, not a proof",
                "the loss seen does not agree with the loss expected",
            ),
        ),
        (
            loss(250.0, 3.0),
            "cannot tell",
            (
                "equal averages with a chain between them are a finding, not a proof",
                "the tolerances are too wide to tell a loss from none",
            ),
        ),
        (loss(244.0, 3.0), "cannot tell", ("the tolerances are too wide to tell a loss from none",)),
        (None, "cannot tell", ("there is nothing to hold it against",)),
    ],
)
def test_plausibility(found: LossVerdict | None, says: str, because: tuple[str, ...]) -> None:
    verdict = plausibility_verdict(found)
    assert (verdict.subject, verdict.says, verdict.because) == ("plausibility", says, because)


def test_equal_averages_that_agree_all_the_same_are_no_proof() -> None:
    """A ride of great doubt of its own: level within it, and still in agreement with a loss."""
    found = expected_loss(
        250.0,
        246.5,
        loss_pct=(2.0, 3.0),
        pedals_tolerance_pct=0.4,
        hub_tolerance_pct=0.4,
        ride_standard_pct=0.8,
    )
    assert (found.verdict, found.equal_averages, found.could_tell_no_loss) == ("agrees", True, True)
    assert plausibility_verdict(found).says == "cannot tell"


def test_the_odd_one_out_is_a_reason_and_no_verdict() -> None:
    three = three_meters(
        [POWER + NOISE[0], POWER + NOISE[1], 0.95 * POWER + NOISE[2]], ("pedals", "hub", "trainer")
    )
    verdict = plausibility_verdict(three=three)
    assert verdict.says == "cannot tell"
    assert "the odd one out by level is trainer" in verdict.because
