"""What a receiver shows of a product, link by link and at its best."""

from __future__ import annotations

import pytest

from spindlewise.reception.reading_mode import (
    Ability,
    Channels,
    LinkNow,
    Mode,
    Power,
    ReceiverNow,
    receive,
    receive_over,
)


def receiver(
    free: Channels = 2,
    pairs: Ability = "can",
    protocols: tuple[str, ...] = ("ANT+", "Bluetooth"),
    balance: Ability = "can",
    metrics: Ability = "can",
) -> ReceiverNow:
    return ReceiverNow("head unit", protocols, free, pairs, balance, metrics)


def link(power: Power, protocol: str = "Bluetooth", **carries: str) -> LinkNow:
    return LinkNow(protocol, power, **carries)  # type: ignore[arg-type]


# what is sent, channels free, whether two sensors pair -> what is shown, channels used
TABLE: list[tuple[Power, Channels, Ability, Mode, int]] = [
    ("both sides", 1, "cannot", "both sides", 1),
    ("both sides", 2, "can", "both sides", 1),
    ("both sides", "unlimited", "can", "both sides", 1),
    ("both sides", "unknown", "unknown", "both sides", 1),
    ("both sides", 0, "can", "nothing", 0),
    ("two channels", 2, "can", "both sides", 2),
    ("two channels", 5, "can", "both sides", 2),
    ("two channels", "unlimited", "can", "both sides", 2),
    ("two channels", "unlimited", "cannot", "one side only", 1),
    ("two channels", 2, "cannot", "one side only", 1),
    ("two channels", 1, "can", "one side only", 1),
    ("two channels", 1, "unknown", "one side only", 1),
    ("two channels", 0, "can", "nothing", 0),
    ("two channels", "unknown", "cannot", "one side only", 1),
    ("two channels", "unknown", "can", "unknown", 2),
    ("two channels", "unknown", "unknown", "unknown", 2),
    ("two channels", 2, "unknown", "unknown", 2),
    ("one side doubled", 1, "cannot", "one side doubled", 1),
    ("one side doubled", "unlimited", "can", "one side doubled", 1),
    ("one side doubled", 0, "can", "nothing", 0),
    ("none", 2, "can", "nothing", 0),
    ("none", 0, "can", "nothing", 0),
    ("unknown", 2, "can", "unknown", 1),
    ("unknown", 0, "can", "nothing", 0),
]


@pytest.mark.parametrize(("power", "free", "pairs", "mode", "used"), TABLE)
def test_what_is_sent_and_what_is_shown(
    power: Power, free: Channels, pairs: Ability, mode: Mode, used: int
) -> None:
    found = receive([link(power)], receiver(free, pairs))

    assert (found.mode, found.channels_used) == (mode, used)
    assert found.protocol == (None if mode == "nothing" else "Bluetooth")
    assert found.because
    if mode != "unknown":
        assert found.at_least == found.at_most == mode


def test_an_unknown_pairing_still_shows_one_side_and_perhaps_both() -> None:
    found = receive([link("two channels")], receiver(2, "unknown"))

    assert (found.at_least, found.mode, found.at_most) == ("one side only", "unknown", "both sides")
    assert "unknown" in found.because[0]


def test_an_unknown_link_may_show_anything() -> None:
    found = receive([link("unknown")], receiver())

    assert (found.at_least, found.mode, found.at_most) == ("nothing", "unknown", "both sides")
    assert (found.balance, found.stroke_metrics) == ("unknown", "does not arrive")


# what is sent, channels free, whether two sensors pair -> every reason that is given
REASONS: list[tuple[Power, Channels, Ability, tuple[str, ...]]] = [
    ("none", 2, "can", ("Bluetooth carries no power",)),
    ("both sides", 0, "can", ("no channel is free for power",)),
    ("unknown", 1, "can", ("what Bluetooth carries of power is unknown",)),
    ("both sides", 1, "can", ("Bluetooth carries the sum of both sides on one channel",)),
    ("one side doubled", 1, "can", ("Bluetooth carries one side, doubled", "one side has no balance")),
    (
        "two channels",
        2,
        "cannot",
        (
            "Bluetooth sends each pedal as a sensor of its own, and the receiver takes one for a rider",
            "one side has no balance",
        ),
    ),
    (
        "two channels",
        1,
        "can",
        (
            "Bluetooth sends each pedal as a sensor of its own, and one channel is free",
            "one side has no balance",
        ),
    ),
    (
        "two channels",
        2,
        "unknown",
        ("Bluetooth sends each pedal as a sensor of its own; whether the receiver takes two is unknown",),
    ),
    (
        "two channels",
        "unknown",
        "can",
        ("Bluetooth sends each pedal as a sensor of its own; whether two channels are free is unknown",),
    ),
    (
        "two channels",
        2,
        "can",
        ("Bluetooth sends each pedal as a sensor of its own, and the receiver takes two",),
    ),
]


@pytest.mark.parametrize(("power", "free", "pairs", "because"), REASONS)
def test_every_reading_says_why(
    power: Power, free: Channels, pairs: Ability, because: tuple[str, ...]
) -> None:
    found = receive([link(power, balance="carried")], receiver(free, pairs))

    assert found.because == because


def test_stroke_metrics_of_an_unknown_link_are_unknown_even_if_the_field_is_sent() -> None:
    """Whether power comes at all is unknown, and stroke metrics come with it."""
    found = receive([link("unknown", stroke_metrics="carried")], receiver())

    assert found.stroke_metrics == "unknown"


@pytest.mark.parametrize("power", ["both sides", "none"])
def test_the_reading_names_its_receiver(power: Power) -> None:
    assert receive([link(power)], receiver()).receiver == "head unit"


def test_a_reading_of_nothing_needs_no_firmware_and_begins_on_no_date() -> None:
    found = receive([LinkNow("ANT+", "none", since="2026-06-01", firmware="3.2")], receiver())

    assert (found.mode, found.since, found.firmware) == ("nothing", "", None)


def test_no_protocol_in_common_says_who_speaks_what() -> None:
    found = receive([link("both sides", "Bluetooth")], receiver(protocols=("ANT+",)))

    assert found.mode == "nothing"
    assert found.because == ("the product sends Bluetooth, the receiver hears ANT+",)


def test_a_cable_computer_hears_neither_radio_protocol() -> None:
    found = receive(
        [link("both sides", "Bluetooth"), link("both sides", "ANT+")], receiver(protocols=("cable",))
    )

    assert found.because == ("the product sends ANT+ and Bluetooth, the receiver hears cable",)


def test_a_plain_pedal_sends_nothing() -> None:
    found = receive([], receiver())

    assert found.mode == "nothing"
    assert found.because == ("the product sends nothing by radio, the receiver hears ANT+ and Bluetooth",)


def test_a_receiver_that_hears_nothing() -> None:
    found = receive_over(link("both sides"), receiver(protocols=()))

    assert found.because == ("the product sends Bluetooth, the receiver hears nothing by radio",)


class TestBest:
    def test_both_sides_over_ant_beat_a_doubled_side_over_bluetooth(self) -> None:
        links = [link("one side doubled", "Bluetooth"), link("both sides", "ANT+")]

        found = receive(links, receiver())

        assert (found.mode, found.protocol) == ("both sides", "ANT+")
        assert "over Bluetooth: one side doubled" in found.because

    def test_a_phone_on_bluetooth_alone_gets_the_doubled_side(self) -> None:
        links = [link("one side doubled", "Bluetooth"), link("both sides", "ANT+")]

        assert receive(links, receiver(protocols=("Bluetooth",))).mode == "one side doubled"

    def test_a_doubled_side_beats_one_side_only(self) -> None:
        links = [link("two channels", "ANT+"), link("one side doubled", "Bluetooth")]

        assert receive(links, receiver(1)).protocol == "Bluetooth"

    def test_what_is_certain_beats_what_is_only_possible(self) -> None:
        links = [link("unknown", "ANT+"), link("one side doubled", "Bluetooth")]

        found = receive(links, receiver())

        assert (found.mode, found.protocol) == ("one side doubled", "Bluetooth")
        assert "over ANT+: unknown" in found.because

    def test_what_is_possible_tells_level_certainties_apart(self) -> None:
        links = [link("none", "ANT+"), link("unknown", "Bluetooth")]

        assert receive(links, receiver()).protocol == "Bluetooth"

    def test_balance_tells_level_modes_apart(self) -> None:
        links = [link("both sides", "ANT+"), link("both sides", "Bluetooth", balance="carried")]

        assert receive(links, receiver()).protocol == "Bluetooth"

    def test_then_stroke_metrics(self) -> None:
        links = [
            link("both sides", "ANT+", balance="carried"),
            link("both sides", "Bluetooth", balance="carried", stroke_metrics="unknown"),
        ]

        assert receive(links, receiver()).protocol == "Bluetooth"

    def test_then_fewer_channels(self) -> None:
        links = [link("two channels", "ANT+"), link("both sides", "Bluetooth", balance="carried")]

        found = receive(links, receiver(2))

        assert (found.protocol, found.channels_used, found.balance) == ("Bluetooth", 1, "arrives")

    def test_then_the_name_whatever_the_order(self) -> None:
        links = [link("both sides", "Bluetooth"), link("both sides", "ANT+")]

        assert receive(links, receiver()) == receive(links[::-1], receiver())
        assert receive(links, receiver()).protocol == "ANT+"

    def test_the_name_counts_before_the_date_since_when(self) -> None:
        links = [link("both sides", "Bluetooth"), LinkNow("ANT+", "both sides", since="2026-06-01")]

        assert receive(links, receiver()).protocol == "ANT+"

    def test_of_one_protocol_told_twice_the_link_that_needs_no_firmware_is_taken(self) -> None:
        links = [LinkNow("ANT+", "both sides", firmware="3.2"), LinkNow("ANT+", "both sides")]

        assert receive(links, receiver()).firmware is None
        assert receive(links[::-1], receiver()).firmware is None

    def test_a_protocol_told_twice_gives_one_reason_whatever_the_order(self) -> None:
        links = [link("both sides", "ANT+"), link("none", "ANT+")]

        assert receive(links, receiver(0)) == receive(links[::-1], receiver(0))

    def test_when_all_fail_each_reason_is_there(self) -> None:
        found = receive([link("none", "Bluetooth"), link("none", "ANT+")], receiver())

        assert found.because == ("ANT+ carries no power", "over Bluetooth: nothing")

    def test_firmware_and_date_of_the_chosen_link_come_along(self) -> None:
        found = receive([LinkNow("ANT+", "both sides", since="2026-06-01", firmware="3.2")], receiver())

        assert (found.since, found.firmware) == ("2026-06-01", "3.2")


class TestBalance:
    def test_power_does_not_bring_balance(self) -> None:
        found = receive([link("both sides", balance="absent")], receiver())

        assert (found.mode, found.balance) == ("both sides", "does not arrive")
        assert "Bluetooth carries no balance" in found.because

    @pytest.mark.parametrize(
        ("carried", "shows", "arrives"),
        [
            ("carried", "can", "arrives"),
            ("carried", "unknown", "unknown"),
            ("carried", "cannot", "does not arrive"),
            ("unknown", "can", "unknown"),
            ("unknown", "cannot", "does not arrive"),
            ("absent", "unknown", "does not arrive"),
        ],
    )
    def test_it_needs_the_link_and_the_receiver(self, carried: str, shows: Ability, arrives: str) -> None:
        both = receiver(balance=shows, metrics=shows)

        found = receive([link("both sides", balance=carried, stroke_metrics=carried)], both)

        assert found.balance == found.stroke_metrics == arrives

    def test_a_receiver_of_two_sensors_works_it_out_itself(self) -> None:
        assert receive([link("two channels", balance="absent")], receiver(2)).balance == "arrives"
        assert receive([link("two channels", balance="absent")], receiver(2, "unknown")).balance == "unknown"

    def test_two_sensors_are_not_blamed_for_carrying_no_balance(self) -> None:
        found = receive([link("two channels", balance="absent")], receiver(2))

        assert not any("balance" in reason for reason in found.because)

    def test_one_sensor_of_two_has_none(self) -> None:
        found = receive([link("two channels", balance="carried")], receiver(1))

        assert found.balance == "does not arrive"
        assert "one side has no balance" in found.because

    def test_a_doubled_side_has_none_even_if_the_field_is_sent(self) -> None:
        found = receive([link("one side doubled", balance="carried")], receiver())

        assert found.balance == "does not arrive"

    def test_a_receiver_without_the_field_says_so(self) -> None:
        found = receive([link("both sides", balance="carried")], receiver(balance="cannot"))

        assert "the receiver does not show balance" in found.because

    def test_stroke_metrics_of_one_side_arrive_with_it(self) -> None:
        found = receive([link("two channels", stroke_metrics="carried")], receiver(1))

        assert (found.mode, found.stroke_metrics) == ("one side only", "arrives")


@pytest.mark.parametrize("what", ["power", "balance", "stroke_metrics"])
def test_a_link_with_an_unheard_of_word_is_refused(what: str) -> None:
    words = {"power": "both sides", "balance": "carried", "stroke_metrics": "carried"} | {what: "plenty"}

    with pytest.raises(ValueError, match=f"^{what} is 'plenty'; it is one of: "):
        LinkNow("ANT+", **words)  # type: ignore[arg-type]


@pytest.mark.parametrize("what", ["pairs_two_sensors", "shows_balance", "shows_stroke_metrics"])
def test_a_receiver_with_an_unheard_of_word_is_refused(what: str) -> None:
    with pytest.raises(ValueError, match=f"^{what} is 'yes'; it is one of: can, cannot, unknown$"):
        ReceiverNow("watch", ("ANT+",), **{what: "yes"})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("free", "said"),
    [
        (-1, "^free_channels is -1; zero or more can be free$"),
        ("many", "^free_channels is 'many'; it is one of: unlimited, unknown$"),
    ],
)
def test_a_receiver_with_impossible_channels_is_refused(free: Channels, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        ReceiverNow("watch", ("ANT+",), free)
