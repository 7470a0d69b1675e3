"""Reading mode: what a receiver really shows of a product, which is not what the product sends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias, get_args

Power = Literal["both sides", "two channels", "one side doubled", "none", "unknown"]
"""What a link sends: the sum of both sides on one channel, each pedal on a channel of its own, ..."""
Carry = Literal["carried", "absent", "unknown"]
Mode = Literal["both sides", "one side doubled", "one side only", "nothing", "unknown"]
"""What the receiver shows; `one side only` is half a reading, `one side doubled` a guess at the whole."""
Ability = Literal["can", "cannot", "unknown"]
Arrival = Literal["arrives", "does not arrive", "unknown"]
Channels: TypeAlias = int | Literal["unlimited", "unknown"]

_POWERS: tuple[str, ...] = get_args(Power)
_CARRIES: tuple[str, ...] = get_args(Carry)
_WORST_FIRST: tuple[Mode, ...] = ("nothing", "one side only", "one side doubled", "both sides")
_ARRIVALS: tuple[Arrival, ...] = ("does not arrive", "unknown", "arrives")
_CARRIED: dict[Carry, Arrival] = {"carried": "arrives", "absent": "does not arrive", "unknown": "unknown"}
_ABLE: dict[Ability, Arrival] = {"can": "arrives", "cannot": "does not arrive", "unknown": "unknown"}


@dataclass(frozen=True, slots=True)
class LinkNow:
    """One radio protocol of a product as it stands on the as-of date; promised firmware is left out already.

    `since` is text for the reader ("2026-06-01", "firmware 3.2" or nothing), `firmware` the version needed.
    Raises ValueError for a word that is not one of the allowed ones.
    """

    protocol: str
    power: Power
    balance: Carry = "absent"
    stroke_metrics: Carry = "absent"
    since: str = ""
    firmware: str | None = None

    def __post_init__(self) -> None:
        _one_of("power", self.power, _POWERS)
        _one_of("balance", self.balance, _CARRIES)
        _one_of("stroke_metrics", self.stroke_metrics, _CARRIES)


@dataclass(frozen=True, slots=True)
class ReceiverNow:
    """A receiver by what it can do; `free_channels` is what is left for power on all protocols together.

    Free channels `unknown` means: one for power is taken to be there (a buyer names what they ride with), the
    second is not known. Raises ValueError for a word or a number that is not allowed.
    """

    name: str
    protocols: tuple[str, ...]
    free_channels: Channels = "unknown"
    pairs_two_sensors: Ability = "unknown"
    shows_balance: Ability = "unknown"
    shows_stroke_metrics: Ability = "unknown"

    def __post_init__(self) -> None:
        if isinstance(self.free_channels, str):
            _one_of("free_channels", self.free_channels, ("unlimited", "unknown"))
        elif self.free_channels < 0:
            raise ValueError(f"free_channels is {self.free_channels}; zero or more can be free")
        for what in ("pairs_two_sensors", "shows_balance", "shows_stroke_metrics"):
            _one_of(what, getattr(self, what), get_args(Ability))


@dataclass(frozen=True, slots=True)
class Reception:
    """What arrives at one receiver, over which protocol, and why.

    `at_least` and `at_most` bound the mode; they are the mode itself unless that is `unknown`.
    """

    receiver: str
    mode: Mode
    protocol: str | None
    firmware: str | None
    since: str
    channels_used: int
    balance: Arrival
    stroke_metrics: Arrival
    because: tuple[str, ...]
    at_least: Mode
    at_most: Mode


def receive(links: Sequence[LinkNow], receiver: ReceiverNow) -> Reception:
    """Give the best reading that the receiver shows of the product, over the protocols that both speak.

    Best: both sides, then one side doubled, one side only, nothing; what is certain counts first and what is
    possible second. Level ones are told apart by balance, stroke metrics, fewer channels, protocol name.
    Without links the product sends nothing; where the links are unknown, pass one of power `unknown`.

    >>> head_unit = ReceiverNow("head unit", ("ANT+", "Bluetooth"), 1, "cannot", "can", "can")
    >>> found = receive([LinkNow("Bluetooth", "two channels"), LinkNow("ANT+", "both sides")], head_unit)
    >>> found.mode, found.protocol, found.balance
    ('both sides', 'ANT+', 'does not arrive')
    """
    heard = [link for link in links if link.protocol in receiver.protocols]
    if not heard:
        return _nothing(receiver, _no_common_protocol(links, receiver))
    readings = [(link.protocol, receive_over(link, receiver)) for link in heard]
    taken, best = min(readings, key=lambda each: (_preference(each[1]), each[0], each[1].because))
    others = {f"over {protocol}: {reading.mode}" for protocol, reading in readings if protocol != taken}
    return replace(best, because=(*best.because, *sorted(others))) if others else best


def receive_over(link: LinkNow, receiver: ReceiverNow) -> Reception:
    """Give the reading over this one link; `nothing` where the receiver does not hear its protocol."""
    if link.protocol not in receiver.protocols:
        return _nothing(receiver, _no_common_protocol([link], receiver))
    at_least, at_most, why = _bounds(link, receiver)
    if at_most == "nothing":
        return _nothing(receiver, why)
    mode = at_least if at_least == at_most else "unknown"
    two = link.power == "two channels"
    # two sensors send no balance: the receiver works it out, so only both sides and its own ability count
    balance = _all_of(
        "unknown" if mode == "unknown" else "arrives" if mode == "both sides" else "does not arrive",
        "arrives" if two else _carried("unknown" if link.power == "unknown" else link.balance),
        _able(receiver.shows_balance),
    )
    metrics = _all_of(
        "unknown" if at_least == "nothing" else "arrives",
        _carried(link.stroke_metrics),
        _able(receiver.shows_stroke_metrics),
    )
    return Reception(
        receiver=receiver.name,
        mode=mode,
        protocol=link.protocol,
        firmware=link.firmware,
        since=link.since,
        channels_used=2 if two and at_most == "both sides" else 1,
        balance=balance,
        stroke_metrics=metrics,
        because=(why, *_why_no_balance(link, receiver, mode)),
        at_least=at_least,
        at_most=at_most,
    )


def _bounds(link: LinkNow, receiver: ReceiverNow) -> tuple[Mode, Mode, str]:
    """The least and the most that this link can give, and the sentence that says why."""
    over, free = link.protocol, receiver.free_channels
    if link.power == "none":
        return "nothing", "nothing", f"{over} carries no power"
    if free == 0:
        return "nothing", "nothing", "no channel is free for power"
    if link.power == "unknown":
        return "nothing", "both sides", f"what {over} carries of power is unknown"
    if link.power == "both sides":
        return "both sides", "both sides", f"{over} carries the sum of both sides on one channel"
    if link.power == "one side doubled":
        return "one side doubled", "one side doubled", f"{over} carries one side, doubled"
    sent = f"{over} sends each pedal as a sensor of its own"
    if receiver.pairs_two_sensors == "cannot":
        return "one side only", "one side only", f"{sent}, and the receiver takes one for a rider"
    if free == 1:
        return "one side only", "one side only", f"{sent}, and one channel is free"
    if receiver.pairs_two_sensors == "unknown":
        return "one side only", "both sides", f"{sent}; whether the receiver takes two is unknown"
    if free == "unknown":
        return "one side only", "both sides", f"{sent}; whether two channels are free is unknown"
    return "both sides", "both sides", f"{sent}, and the receiver takes two"


def _why_no_balance(link: LinkNow, receiver: ReceiverNow, mode: Mode) -> tuple[str, ...]:
    if mode in ("one side doubled", "one side only"):
        return ("one side has no balance",)
    if receiver.shows_balance == "cannot":
        return ("the receiver does not show balance",)
    if link.power == "both sides" and link.balance == "absent":
        return (f"{link.protocol} carries no balance",)
    return ()


def _nothing(receiver: ReceiverNow, why: str) -> Reception:
    return Reception(
        receiver=receiver.name,
        mode="nothing",
        protocol=None,
        firmware=None,
        since="",
        channels_used=0,
        balance="does not arrive",
        stroke_metrics="does not arrive",
        because=(why,),
        at_least="nothing",
        at_most="nothing",
    )


def _no_common_protocol(links: Sequence[LinkNow], receiver: ReceiverNow) -> str:
    sent = " and ".join(sorted({link.protocol for link in links})) or "nothing by radio"
    heard = " and ".join(sorted(set(receiver.protocols))) or "nothing by radio"
    return f"the product sends {sent}, the receiver hears {heard}"


def _preference(reading: Reception) -> tuple[int | str, ...]:
    return (
        -_WORST_FIRST.index(reading.at_least),
        -_WORST_FIRST.index(reading.at_most),
        -_ARRIVALS.index(reading.balance),
        -_ARRIVALS.index(reading.stroke_metrics),
        reading.channels_used,
        reading.protocol or "",
        reading.since,
        reading.firmware or "",
    )


def _all_of(*parts: Arrival) -> Arrival:
    return next(arrival for arrival in _ARRIVALS if arrival in parts)


def _carried(carry: Carry) -> Arrival:
    return _CARRIED[carry]


def _able(ability: Ability) -> Arrival:
    return _ABLE[ability]


def _one_of(what: str, given: str, allowed: tuple[str, ...]) -> None:
    if given not in allowed:
        raise ValueError(f"{what} is {given!r}; it is one of: {', '.join(allowed)}")
