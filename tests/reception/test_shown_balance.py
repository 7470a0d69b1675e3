"""Balance as a display shows it."""

from __future__ import annotations

import pytest

from spindlewise.reception.doubled_side import doubled_error
from spindlewise.reception.shown_balance import shown_balance


@pytest.mark.parametrize(
    ("share", "protocol", "shown"),
    [
        (0.483, "Bluetooth", 0.485),
        (0.482, "Bluetooth", 0.48),
        (0.483, "ANT+", 0.48),
        (0.485, "ANT+", 0.49),
        (0.4825, "Bluetooth", 0.485),
        (0.5, "Bluetooth", 0.5),
        (0.0, "ANT+", 0.0),
        (1.0, "ANT+", 1.0),
    ],
)
def test_steps_of_half_a_percent_and_of_one(share: float, protocol: str, shown: float) -> None:
    assert shown_balance(share, protocol).left_share == pytest.approx(shown, abs=1e-12)


def test_the_ends_of_the_scale_stay_on_it() -> None:
    assert (shown_balance(0.0, "ANT+").low, shown_balance(1.0, "ANT+").high) == (0.0, 1.0)


def test_a_balance_read_off_a_display_leaves_a_doubled_side_uncertain_by_two_percent() -> None:
    read = shown_balance(0.48, "ANT+")

    error = doubled_error((read.low, read.high), "left")

    assert (error.low_pct, error.high_pct) == pytest.approx((-5, -3))


def test_a_share_outside_0_to_1_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^the left share is 48; it lies in 0 to 1 \(48 % is 0.48\)$"):
        shown_balance(48, "ANT+")
    for share in (-0.01, 1.01):
        with pytest.raises(ValueError, match=r"it lies in 0 to 1"):
            shown_balance(share, "ANT+")


def test_a_protocol_without_a_known_step_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^the protocol is 'wire'; the step of balance is known for: ANT\+, Bluetooth$"
    ):
        shown_balance(0.48, "wire")
