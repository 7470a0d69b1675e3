"""A doubled side: one pedal is measured, its power is doubled, and the rider's imbalance becomes an error."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

SensorSide = Literal["left", "right", "unknown"]

POPULATION_ASYMMETRY_PCT = 4.086
"""Mean asymmetry index of 23 recreational riders (Osmani 2022, MLS Sport Research 2(1):1-17), abstract seen.

The index is read as 100 * |R - L| / ((R + L) / 2), the mean of each rider's own index without sign: the
group's split of 50.56 to 49.44 alone would give 2.24. The paper's formula was not seen; were the difference
referred to the stronger leg instead, the doubled error would grow by a fiftieth part.
"""


@dataclass(frozen=True, slots=True)
class DoubledError:
    """The error of a doubled side over a range of balance, in percent of the true total power, with its sign.

    Negative reads low. `basis` says whose balance it is: the buyer's own, or the `population`'s where the
    buyer's is unknown. `standard_pct` is the standard uncertainty about `expected_pct`. The watts are those
    errors at threshold power, nothing where that is not stated.
    """

    sensor_side: SensorSide
    basis: Literal["buyer", "population"]
    low_pct: float
    expected_pct: float
    high_pct: float
    standard_pct: float
    spread: Literal["rectangular", "normal"]
    low_w: float | None = None
    expected_w: float | None = None
    high_w: float | None = None

    @property
    def sign(self) -> Literal["reads low", "reads high", "reads true", "either way"]:
        """Which way the reading strays over the whole range."""
        if self.low_pct == self.high_pct == 0:
            return "reads true"
        if self.high_pct <= 0:
            return "reads low"
        return "reads high" if self.low_pct >= 0 else "either way"


def doubled_error_pct(left_share: float, sensor_side: Literal["left", "right"] = "left") -> float:
    """Give the error in percent of the truth for one balance: 100 * (2 b - 1), b the measured side's share.

    A left share of 0.47 measured on the left reads 6 % low. Raises ValueError unless the share is in 0 to 1.

    >>> round(doubled_error_pct(0.47, "left"), 6), round(doubled_error_pct(0.47, "right"), 6)
    (-6.0, 6.0)
    """
    if not 0.0 <= left_share <= 1.0:
        raise ValueError(f"the left share is {left_share}; it lies in 0 to 1 (47 % is 0.47)")
    if sensor_side not in ("left", "right"):
        raise ValueError(f"the sensor side is {sensor_side!r}; one balance needs 'left' or 'right'")
    left_error_pct = 100.0 * (2.0 * left_share - 1.0)
    return left_error_pct if sensor_side == "left" else -left_error_pct


def doubled_error(
    left_share: tuple[float, float] | None,
    sensor_side: SensorSide = "left",
    threshold_power_w: float | None = None,
) -> DoubledError:
    """Give the error of a doubled side over the buyer's range of left shares, or over the population's.

    `left_share` is (low, high), each 0 to 1; nothing where the balance is unknown. The expected error is that
    of the range's middle, and every balance in it is taken as equally likely (rectangular, half-width over
    the root of three). For an unknown sensor side the error may take either sign, so both ranges are spanned.
    For the population see `POPULATION_ASYMMETRY_PCT`. Raises ValueError for a range that is not in order or
    lies outside 0 to 1, a side that is none, and a threshold power that is not positive.

    >>> error = doubled_error((0.47, 0.49), "left", 250)
    >>> [round(pct, 3) for pct in (error.low_pct, error.expected_pct, error.high_pct)], error.sign
    ([-6.0, -4.0, -2.0], 'reads low')
    >>> round(error.low_w, 3)
    -15.0
    """
    if sensor_side not in ("left", "right", "unknown"):
        raise ValueError(f"the sensor side is {sensor_side!r}; it is 'left', 'right' or 'unknown'")
    if threshold_power_w is not None and not 0 < threshold_power_w < math.inf:
        raise ValueError(f"the threshold power is {threshold_power_w} W; it is more than zero and finite")
    low, expected, high, standard = _population() if left_share is None else _over(left_share, sensor_side)
    watts = [
        None if threshold_power_w is None else threshold_power_w * e / 100 for e in (low, expected, high)
    ]
    return DoubledError(
        sensor_side=sensor_side,
        basis="population" if left_share is None else "buyer",
        low_pct=low,
        expected_pct=expected,
        high_pct=high,
        standard_pct=standard,
        spread="normal" if left_share is None else "rectangular",
        low_w=watts[0],
        expected_w=watts[1],
        high_w=watts[2],
    )


def _over(left_share: tuple[float, float], sensor_side: SensorSide) -> tuple[float, float, float, float]:
    if not left_share[0] <= left_share[1]:
        raise ValueError(
            f"the left share runs from {left_share[0]} to {left_share[1]}; low <= high is needed"
        )
    sides: tuple[Literal["left", "right"], ...] = ("left", "right")
    tried = sides if sensor_side == "unknown" else (sensor_side,)
    errors = [doubled_error_pct(share, side) for share in left_share for side in tried]
    low, high = min(errors), max(errors)
    return low, (low + high) / 2, high, (high - low) / 2 / math.sqrt(3)


def _population() -> tuple[float, float, float, float]:
    """Low, expected, high and standard error of a rider of whom nothing is known.

    The index is twice the doubled error, and a normal spread about zero of mean size m has the standard
    deviation m * sqrt(pi / 2). The range holds 95 % of riders. That the group leant to the right is left
    aside: 23 riders cannot say it of a buyer.
    """
    standard = POPULATION_ASYMMETRY_PCT / 2 * math.sqrt(math.pi / 2)
    half_width = 1.959963984540054 * standard
    return -half_width, 0.0, half_width, standard
