"""Pedals against a hub."""

import math

import pytest

from spindlewise.bench.expected_loss import LossVerdict, expected_loss


def held(pedals_w: float, hub_w: float, tolerance: float = 1.0, **options: float) -> LossVerdict:
    return expected_loss(
        pedals_w,
        hub_w,
        loss_pct=(1.5, 3.5),
        pedals_tolerance_pct=tolerance,
        hub_tolerance_pct=tolerance,
        **options,
    )


def test_e_n_by_hand() -> None:
    found = held(250.0, 240.0, ride_standard_pct=0.2)
    u_seen = math.hypot(0.96 * math.sqrt(2 / 3), 0.2)
    reach = 2 * math.hypot(u_seen, 1 / math.sqrt(3))
    assert found.e_n == pytest.approx((4.0 - 2.5) / reach)
    assert found.seen.value == pytest.approx(4.0)
    assert found.seen.high - 4.0 == pytest.approx(2 * u_seen)
    assert found.expected.high - 2.5 == pytest.approx(2 / math.sqrt(3))
    assert found.verdict == "agrees"
    assert found.expected_hub_w.value == pytest.approx(250.0 * 0.975)


def test_equal_averages_are_a_finding_and_not_a_proof() -> None:
    found = held(250.0, 250.0)
    assert (found.verdict, found.equal_averages, found.could_tell_no_loss) == ("does not agree", True, True)
    wide = held(250.0, 250.0, tolerance=2.0)
    assert (wide.verdict, wide.equal_averages, wide.could_tell_no_loss) == ("agrees", True, False)


@pytest.mark.parametrize(
    ("hub_w", "verdict"), [(255.0, "does not agree"), (244.0, "agrees"), (230.0, "does not agree")]
)
def test_a_hub_above_its_pedals_does_not_agree(hub_w: float, verdict: str) -> None:
    assert held(250.0, hub_w).verdict == verdict


def test_averages_level_within_the_doubt_of_the_ride_are_equal() -> None:
    assert not held(250.0, 248.0).equal_averages
    assert held(250.0, 248.0, ride_standard_pct=0.5).equal_averages


def test_e_n_of_one_is_the_border_and_agrees() -> None:
    reach = 2 * 1 / math.sqrt(3)
    exact = expected_loss(100.0, 98.0, loss_pct=(2.0, 2.0), pedals_tolerance_pct=1.0, hub_tolerance_pct=0.0)
    assert exact.e_n == pytest.approx(0.0)
    border = 2.0 + reach / (1 + reach / 100)  # a loss of so much leaves a ratio whose own doubt is smaller
    below = expected_loss(
        100.0, 100.0 - border + 0.1, loss_pct=(2.0, 2.0), pedals_tolerance_pct=1.0, hub_tolerance_pct=0.0
    )
    beyond = expected_loss(
        100.0, 100.0 - border - 0.1, loss_pct=(2.0, 2.0), pedals_tolerance_pct=1.0, hub_tolerance_pct=0.0
    )
    assert (below.verdict, beyond.verdict) == ("agrees", "does not agree")


@pytest.mark.parametrize(("pedals_w", "hub_w"), [(0.0, 100.0), (100.0, 0.0), (float("nan"), 1.0)])
def test_averages_of_nothing_are_refused(pedals_w: float, hub_w: float) -> None:
    with pytest.raises(ValueError, match="both are above 0"):
        held(pedals_w, hub_w)


@pytest.mark.parametrize(
    ("loss", "tolerance"), [((3.0, 2.0), 1.0), ((-1.0, 2.0), 1.0), ((1.0, 100.0), 1.0), ((1.0, 2.0), -1.0)]
)
def test_a_range_that_makes_no_sense_is_refused(loss: tuple[float, float], tolerance: float) -> None:
    with pytest.raises(ValueError, match="the loss rises within 0 to 100"):
        expected_loss(100.0, 98.0, loss_pct=loss, pedals_tolerance_pct=tolerance, hub_tolerance_pct=1.0)


def test_without_any_doubt_there_is_no_e_n() -> None:
    with pytest.raises(ValueError, match="there is no E_n number"):
        expected_loss(100.0, 98.0, loss_pct=(2.0, 2.0), pedals_tolerance_pct=0.0, hub_tolerance_pct=0.0)


def test_what_the_hub_should_show() -> None:
    """2.5 % less than the pedals, and both tolerances and the range of the loss about it."""
    found = held(250.0, 240.0)
    reach = 2 * 250.0 * math.hypot(0.975 * math.sqrt(2 / 3), 1 / math.sqrt(3)) / 100
    assert found.expected_hub_w.high - found.expected_hub_w.value == pytest.approx(reach)


@pytest.mark.parametrize(("pedals_w", "hub_w"), [(float("inf"), 100.0), (100.0, float("inf"))])
def test_averages_without_end_are_refused(pedals_w: float, hub_w: float) -> None:
    with pytest.raises(ValueError, match="both are above 0"):
        held(pedals_w, hub_w)
