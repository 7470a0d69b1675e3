"""The lag between two recordings of one ride, found in what their powers do, or no claim."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from spindlewise.bench.correlation import block_sums, correlation_curve, correlations, shared_seconds
from spindlewise.bench.lag_peak import refined_lag, spread_of_blocks
from spindlewise.bench.movements import SMOOTHED_S, movements, on_shared_seconds
from spindlewise.bench.recording import FloatArray

WITHIN_S = 120.0
"""Design choice, no source: clocks that differ by more than two minutes are set, not searched."""

LEAST_PEAK = 0.2
"""Design choice, no source: a weaker correlation is no evidence of one ride."""

LEAST_LEAD = 0.02
"""Design choice, no source: a peak that is hardly higher than the next, by chance or not, is ambiguous."""

WIDEST_PLUS_MINUS_S = 1.0
"""Design choice, no source: a lag that is not known to the second is not claimed."""

ABOVE_CHANCE = 4.0
"""Design choice, no source: so many standard errors of no relation at all has a peak to be high."""

_BLOCKS = 12
_LOBE_S = 6
_STANDARD_ERRORS = 5.0
_AGREEING = 10
_LEAST_BLOCK_S = 60

Because = Literal["", "nothing moves", "too little in common", "at the edge", "ambiguous", "flat"]


@dataclass(frozen=True, slots=True)
class Lag:
    """How much later the second recording shows what the first shows, in seconds; None for no claim.

    Positive: the second is late. `plus_minus_s` is half of a 95 % interval, as by `refined_lag`.
    `peak` is the correlation at the lag, `runner_up` the highest away from it, both -1 to 1 and NaN where
    nothing moves. `because` says why there is no claim. `within_s` is the range that was searched.
    """

    lag_s: float | None
    plus_minus_s: float | None
    peak: float
    runner_up: float
    within_s: float
    because: Because

    @property
    def known(self) -> bool:
        """Whether a lag is claimed."""
        return self.lag_s is not None


def find_lag(
    first_times_s: FloatArray,
    first_power_w: FloatArray,
    second_times_s: FloatArray,
    second_power_w: FloatArray,
    within_s: float = WITHIN_S,
    around_s: float = 0.0,
) -> Lag:
    """Find how much later the second recording is, within `within_s` either way of `around_s`.

    Both powers go on a common 1 Hz clock (straight lines over at most five seconds, for the search only), and
    are averaged over three seconds and differenced; the lag is the peak of their normalised cross-correlation
    over the seconds that both have, refined between the seconds as by `refined_lag`. Differences, since two
    levels that never move say nothing of time. No claim is made where nothing moves, the peak is weak or no
    higher than chance, at the edge of the range, hardly higher than another (a ride that repeats itself), or
    too flat.

    Where that leaves no claim it is tried once more without the zeros: one dropout can drown all else.

    Swapping the two flips the sign; moving the second's times moves the lag. Raises ValueError where the
    range is not one second or more, or not finite.
    """
    if not 1.0 <= within_s < math.inf or not math.isfinite(around_s):
        raise ValueError(f"the lag is sought within {within_s} s of {around_s} s; give one second or more")
    found = _found(first_times_s, first_power_w, second_times_s, second_power_w, within_s, around_s)
    if found.because in ("too little in common", "ambiguous"):
        again = _found(
            first_times_s,
            np.where(first_power_w == 0, np.nan, first_power_w),
            second_times_s,
            np.where(second_power_w == 0, np.nan, second_power_w),
            within_s,
            around_s,
        )
        return again if again.known else found
    return found


def _found(
    first_times_s: FloatArray,
    first_power_w: FloatArray,
    second_times_s: FloatArray,
    second_power_w: FloatArray,
    within_s: float,
    around_s: float,
) -> Lag:
    reach = math.floor(within_s)
    shift = round(around_s)
    powers = on_shared_seconds(first_times_s, first_power_w, second_times_s - shift, second_power_w)
    first, second = (movements(power) for power in (powers.first_w, powers.second_w))
    curve = correlation_curve(first, second, reach)
    if not np.isfinite(curve).any():
        return Lag(None, None, float("nan"), float("nan"), within_s, "nothing moves")
    at = int(np.nanargmax(curve))
    peak = float(curve[at])
    away = np.where(np.abs(np.arange(len(curve)) - at) > _LOBE_S, curve, -np.inf)
    second_at = int(np.nanargmax(away))
    runner_up = float(away[second_at]) if away[second_at] > -np.inf else float("nan")
    shared = shared_seconds(first, second, at - reach)
    chance = ABOVE_CHANCE / math.sqrt(max(shared / SMOOTHED_S, 1.0))
    because: Because = ""
    lag_s = plus_minus = None
    if peak < max(LEAST_PEAK, chance):
        because = "too little in common"
    elif at in (0, 2 * reach):
        because = "at the edge"
    elif runner_up > -1.0 and not _leads(first, second, at - reach, second_at - reach):
        because = "ambiguous"
    else:
        lag_s, plus_minus = refined_lag(powers, at - reach)
        lag_s += shift
        if not plus_minus <= WIDEST_PLUS_MINUS_S:
            because, lag_s, plus_minus = "flat", None, None
    return Lag(lag_s, plus_minus, peak, runner_up, within_s, because)


def _leads(first: FloatArray, second: FloatArray, at: int, other: int) -> bool:
    """Whether the correlation at one lag is higher than at another by more than chance.

    Told from all blocks of time together, or by what each says for itself: one sprint can hold so much of the
    movement that the spread of the whole figure is that sprint's alone.
    """
    sums = block_sums(first, second, [at, other], _BLOCKS)
    whole = sums.sum(axis=2)
    lead = float(np.subtract(*correlations(whole)))
    if lead <= LEAST_LEAD:
        return False
    without = np.subtract(*correlations(whole[:, :, None] - sums))
    if lead > _STANDARD_ERRORS * spread_of_blocks(without)[0]:
        return True
    # a block of less than a minute may hold one change of pace alone, and one change fits at many lags
    return len(first) >= _BLOCKS * _LEAST_BLOCK_S and _each_block_leads(sums)


def _each_block_leads(sums: FloatArray) -> bool:
    """Whether each block for itself fits better at the first of two lags than at the second (a sign test).

    Where both lags fit alike a block says so as often as not, whatever its energy: that `_AGREEING` blocks or
    more agree by chance happens less than once in a thousand times.
    """
    moving = (sums[1:] > 0).all(axis=(0, 1))
    first, second = correlations(sums[:, :, moving])
    return len(first) >= _AGREEING and bool((first > np.maximum(second, 0.0)).all())
