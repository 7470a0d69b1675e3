"""Shown balance: radio sends balance in steps, so a balance read off a display stands for a range."""

from __future__ import annotations

import math
from dataclasses import dataclass

BALANCE_STEP_PCT = {"ANT+": 1.0, "Bluetooth": 0.5}
"""The step of balance in each protocol's power message (ANT+ power-only page; Bluetooth 0x2A63)."""


@dataclass(frozen=True, slots=True)
class ShownBalance:
    """A balance as it is shown, and the left shares (0 to 1) that would be shown so."""

    left_share: float
    low: float
    high: float


def shown_balance(left_share: float, protocol: str) -> ShownBalance:
    """Give what a display shows of a true left share over this protocol, and what it then stands for.

    Half steps round up, which is the sensor's choice and moves nothing but the ends of the range. Fed with a
    balance that the buyer read off a display, it gives the range to count with: 48 % over ANT+ stands for
    47.5 to 48.5 %, and a doubled left side then reads 3 to 5 % low. Raises ValueError for a share outside
    0 to 1 and for a protocol without a known step.

    >>> shown_balance(0.483, "ANT+")
    ShownBalance(left_share=0.48, low=0.475, high=0.485)
    """
    if not 0.0 <= left_share <= 1.0:
        raise ValueError(f"the left share is {left_share}; it lies in 0 to 1 (48 % is 0.48)")
    if protocol not in BALANCE_STEP_PCT:
        known = ", ".join(BALANCE_STEP_PCT)
        raise ValueError(f"the protocol is {protocol!r}; the step of balance is known for: {known}")
    step_pct = BALANCE_STEP_PCT[protocol]
    # the rounding takes away what binary fractions add: 0.485 is shown as 0.485 is, not as 0.48499...
    steps = math.floor(round(100 * left_share / step_pct, 9) + 0.5)
    shown, half = steps * step_pct / 100, step_pct / 200
    return ShownBalance(shown, max(shown - half, 0.0), min(shown + half, 1.0))
