"""Laws of reception: more protocols, channels, links or abilities never worsen what is shown."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.reception.channel_budget import channel_budget
from spindlewise.reception.reading_mode import LinkNow, Mode, ReceiverNow, Reception, receive

MODES: list[Mode] = ["nothing", "one side only", "one side doubled", "both sides"]
ARRIVALS = ["does not arrive", "unknown", "arrives"]
PROTOCOLS = ("ANT+", "Bluetooth", "cable")

carries = st.sampled_from(["carried", "absent", "unknown"])
abilities = st.sampled_from(["can", "cannot", "unknown"])
powers = st.sampled_from(["both sides", "two channels", "one side doubled", "none", "unknown"])
one_link = st.builds(
    LinkNow,
    st.sampled_from(PROTOCOLS),
    powers,
    carries,
    carries,
    st.sampled_from(["", "2026-06-01"]),
    st.none(),
)
many_links = st.lists(one_link, max_size=4)
heard = st.sets(st.sampled_from(PROTOCOLS)).map(lambda names: tuple(sorted(names)))
channels = st.integers(0, 3) | st.sampled_from(["unlimited", "unknown"])
receivers = st.builds(ReceiverNow, st.just("receiver"), heard, channels, abilities, abilities, abilities)


def standing(found: Reception) -> tuple[int, int]:
    return MODES.index(found.at_least), MODES.index(found.at_most)


def naive_at_least(links: Sequence[LinkNow], receiver: ReceiverNow) -> Mode:
    """The sure part, counted as a rider would, taking nothing on trust but one channel."""
    free = {"unlimited": 99, "unknown": 1}.get(str(receiver.free_channels), receiver.free_channels)
    assert isinstance(free, int)
    powers = {link.power for link in links if link.protocol in receiver.protocols and free >= 1}
    if "both sides" in powers:
        return "both sides"
    if "two channels" in powers and free >= 2 and receiver.pairs_two_sensors == "can":
        return "both sides"
    if "one side doubled" in powers:
        return "one side doubled"
    return "one side only" if "two channels" in powers else "nothing"


@settings(deadline=None)
@given(many_links, receivers)
def test_the_sure_part_is_what_a_rider_would_count(links: list[LinkNow], receiver: ReceiverNow) -> None:
    assert receive(links, receiver).at_least == naive_at_least(links, receiver)


@settings(deadline=None)
@given(many_links, receivers)
def test_the_mode_is_its_bounds_where_they_meet_and_unknown_where_not(
    links: list[LinkNow], receiver: ReceiverNow
) -> None:
    found = receive(links, receiver)

    least, most = standing(found)
    assert least <= most
    assert found.mode == (found.at_least if least == most else "unknown")
    assert (found.mode == "nothing") == (found.channels_used == 0) == (found.protocol is None)


@settings(deadline=None)
@given(many_links, receivers, st.sampled_from(PROTOCOLS))
def test_hearing_one_protocol_more(links: list[LinkNow], receiver: ReceiverNow, protocol: str) -> None:
    richer = replace(receiver, protocols=(*receiver.protocols, protocol))

    assert standing(receive(links, richer)) >= standing(receive(links, receiver))


@settings(deadline=None)
@given(many_links, receivers, one_link)
def test_one_link_more(links: list[LinkNow], receiver: ReceiverNow, further: LinkNow) -> None:
    assert standing(receive([*links, further], receiver)) >= standing(receive(links, receiver))


@settings(deadline=None)
@given(many_links, receivers, st.integers(0, 4), st.integers(0, 4) | st.just("unlimited"))
def test_more_channels(links: list[LinkNow], receiver: ReceiverNow, few: int, more: int | str) -> None:
    fewer, richer = few, more if isinstance(more, str) else few + more

    with_few = receive(links, replace(receiver, free_channels=fewer))
    with_more = receive(links, replace(receiver, free_channels=richer))

    assert standing(with_more) >= standing(with_few)


@settings(deadline=None)
@given(many_links, receivers)
def test_pairing_two_sensors(links: list[LinkNow], receiver: ReceiverNow) -> None:
    modes = [
        standing(receive(links, replace(receiver, pairs_two_sensors=ability)))
        for ability in ("cannot", "unknown", "can")
    ]

    assert modes == sorted(modes)


@settings(deadline=None)
@given(one_link, receivers)
def test_showing_balance_never_takes_it_away(link: LinkNow, receiver: ReceiverNow) -> None:
    shown = [
        ARRIVALS.index(receive([link], replace(receiver, shows_balance=ability)).balance)
        for ability in ("cannot", "unknown", "can")
    ]

    assert shown[0] == 0
    assert shown == sorted(shown)


@settings(deadline=None)
@given(many_links, receivers)
def test_balance_arrives_with_both_sides_only(links: list[LinkNow], receiver: ReceiverNow) -> None:
    found = receive(links, receiver)

    if found.balance == "arrives":
        assert found.mode == "both sides"


@settings(deadline=None)
@given(many_links.flatmap(lambda links: st.tuples(st.just(links), st.permutations(links))), receivers)
def test_the_order_of_the_links_changes_nothing(
    orders: tuple[list[LinkNow], list[LinkNow]], receiver: ReceiverNow
) -> None:
    assert receive(orders[0], receiver) == receive(orders[1], receiver)


@settings(deadline=None)
@given(
    st.integers(0, 12), st.lists(st.sampled_from(["heart rate", "cadence", "speed", "lights"]), max_size=8)
)
def test_the_channel_budget_adds_up(total: int, kept: list[str]) -> None:
    budget = channel_budget(total, kept)
    without_cadence = channel_budget(total, kept, cadence_comes_with_power=True)

    assert isinstance(budget.free_channels, int)
    assert isinstance(without_cadence.free_channels, int)
    assert budget.free_channels - budget.short_by + len(kept) == total
    assert 0 in (budget.free_channels, budget.short_by)
    assert without_cadence.free_channels >= budget.free_channels
