"""How many channels are left for power."""

from __future__ import annotations

import pytest

from spindlewise.reception.channel_budget import channel_budget
from spindlewise.reception.reading_mode import LinkNow, ReceiverNow, receive


def test_each_kept_sensor_takes_one_channel() -> None:
    budget = channel_budget(4, ["heart rate", "trainer control", "cadence"])

    assert (budget.total, budget.kept) == (4, ("heart rate", "trainer control", "cadence"))
    assert (budget.free_channels, budget.short_by) == (1, 0)


def test_more_sensors_than_channels_leave_none_and_say_how_many_are_lacking() -> None:
    budget = channel_budget(1, ["heart rate", "speed", "lights"])

    assert (budget.free_channels, budget.short_by) == (0, 2)


def test_giving_up_the_cadence_sensor_makes_room_for_the_second_pedal() -> None:
    links, kept = [LinkNow("Bluetooth", "two channels")], ("heart rate", "cadence")
    shown = []
    for given_up in (False, True):
        free = channel_budget(3, kept, cadence_comes_with_power=given_up).free_channels
        shown.append(receive(links, ReceiverNow("watch", ("Bluetooth",), free, "can")).mode)

    assert shown == ["one side only", "both sides"]
    assert channel_budget(3, kept, cadence_comes_with_power=True).kept == ("heart rate",)


def test_a_receiver_may_have_no_channel_at_all() -> None:
    budget = channel_budget(0, ["heart rate"])

    assert (budget.free_channels, budget.short_by) == (0, 1)


@pytest.mark.parametrize("total", ["unlimited", "unknown"])
def test_what_is_unlimited_or_unknown_stays_so(total: str) -> None:
    budget = channel_budget(total, ["heart rate"])  # type: ignore[arg-type]

    assert (budget.total, budget.free_channels, budget.short_by) == (total, total, 0)
    assert budget.kept == ("heart rate",)


@pytest.mark.parametrize(
    ("total", "said"),
    [
        (-1, "^total is -1; a receiver has zero or more channels$"),
        ("plenty", "^total is 'plenty'; it is a number, 'unlimited' or 'unknown'$"),
    ],
)
def test_an_impossible_total_is_refused(total: object, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        channel_budget(total)  # type: ignore[arg-type]
