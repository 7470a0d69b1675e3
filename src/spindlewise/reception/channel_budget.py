"""Channel budget: how many of a receiver's sensor channels are left for power."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class ChannelBudget:
    """What the receiver has in all, what the rider keeps connected, and what is left for power.

    `free_channels` goes into ReceiverNow as it is; `short_by` counts the channels that the rider's own
    sensors already lack.
    """

    total: int | Literal["unlimited", "unknown"]
    kept: tuple[str, ...]
    free_channels: int | Literal["unlimited", "unknown"]
    short_by: int


def channel_budget(
    total: int | Literal["unlimited", "unknown"],
    kept: Sequence[str] = (),
    *,
    cadence_comes_with_power: bool = False,
) -> ChannelBudget:
    """Give the channels that are free for power once the rider's other sensors have theirs, one each.

    Power pedals send cadence in the power packet itself, so a rider who gives up the separate sensor frees
    its channel: `cadence_comes_with_power` asks what then. Raises ValueError for a total below zero or a
    word that is not allowed.

    >>> channel_budget(3, ["heart rate", "cadence"]).free_channels
    1
    >>> channel_budget(3, ["heart rate", "cadence"], cadence_comes_with_power=True).free_channels
    2
    """
    staying = tuple(what for what in kept if not (cadence_comes_with_power and what == "cadence"))
    if isinstance(total, str):
        if total not in ("unlimited", "unknown"):
            raise ValueError(f"total is {total!r}; it is a number, 'unlimited' or 'unknown'")
        return ChannelBudget(total, staying, total, 0)
    if total < 0:
        raise ValueError(f"total is {total}; a receiver has zero or more channels")
    left = total - len(staying)
    return ChannelBudget(total, staying, max(left, 0), max(-left, 0))
