"""Pedals against hub or trainer: what the chain may take between them, and whether the readings fit that."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from spindlewise.bench.estimate import Estimate, around

COVERAGE = 2.0
"""Coverage factor of the expanded uncertainties behind E_n (ISO 13528:2015, 9.7, from memory)."""

EQUAL_PCT = 0.5
"""Averages that lie no farther apart pass for equal: a whole watt of 200."""

Fit = Literal["agrees", "does not agree"]


@dataclass(frozen=True, slots=True)
class LossVerdict:
    """The loss seen between pedals and hub against the loss expected, in percent of the pedals' reading.

    `e_n` = (seen - expected) / sqrt(U_seen^2 + U_expected^2); within -1 to 1 the two agree. `seen` and
    `expected` carry the expanded uncertainties as intervals. `equal_averages` says that the two averages are
    level within the doubt of the ride alone: with a loss between them that must be there, a finding and not a
    proof.
    """

    verdict: Fit
    e_n: float
    seen: Estimate
    expected: Estimate
    expected_hub_w: Estimate
    equal_averages: bool
    could_tell_no_loss: bool


def expected_loss(
    pedals_w: float,
    hub_w: float,
    *,
    loss_pct: tuple[float, float],
    pedals_tolerance_pct: float,
    hub_tolerance_pct: float,
    ride_standard_pct: float = 0.0,
) -> LossVerdict:
    """Say whether a hub or trainer reads what pedals should leave of it after the chain.

    Seen loss = 100 (pedals - hub) / pedals. Expected: the middle of `loss_pct`, a range, rectangular (half
    width / sqrt 3). Each meter's tolerance is rectangular too, a / sqrt 3, as in the reading's uncertainty
    (JCGM 100:2008, 4.3.7), and shifts the ratio hub / pedals; `ride_standard_pct` is the standard error of
    the mean difference over the ride. All expanded with k = 2 for the E_n number (ISO 13528).
    `could_tell_no_loss` says whether the tolerances are tight enough that no loss at all would have stood out
    (|E_n| above 1): if not, that both agree is worth little. Published losses run from about 1.4 to 19 % in
    the worst laboratory drive (Spicer et al. 2001); 2.3 % in Martin et al. 1998: the range is the caller's to
    choose. Raises ValueError for averages not above zero, a range that does not rise within 0 to 100, and
    tolerances that are below zero or all zero.

    >>> tolerances = {"pedals_tolerance_pct": 1.0, "hub_tolerance_pct": 1.0}
    >>> found = expected_loss(250.0, 244.0, loss_pct=(1.5, 3.5), **tolerances)
    >>> found.verdict, round(found.e_n, 2), found.equal_averages
    ('agrees', -0.05, False)
    """
    low, high = loss_pct
    tolerances = (pedals_tolerance_pct, hub_tolerance_pct, ride_standard_pct)
    if not (0.0 < pedals_w < math.inf and 0.0 < hub_w < math.inf):
        raise ValueError(f"averages of {pedals_w} and {hub_w} W; both are above 0")
    if not 0.0 <= low <= high < 100.0 or any(not 0.0 <= part < math.inf for part in tolerances):
        raise ValueError(
            f"a loss from {low} to {high} % and tolerances {tolerances}; the loss rises within 0 to 100,"
            " tolerances are 0 or more"
        )
    ratio = float(hub_w / pedals_w)
    relative = math.hypot(pedals_tolerance_pct, hub_tolerance_pct) / math.sqrt(3.0)
    u_seen = math.hypot(ratio * relative, ride_standard_pct)
    u_expected = (high - low) / 2.0 / math.sqrt(3.0)
    reach = COVERAGE * math.hypot(u_seen, u_expected)
    if reach == 0.0:
        raise ValueError("no tolerance and no range of loss; without any doubt there is no E_n number")
    seen, expected = 100.0 * (1.0 - ratio), float(low + high) / 2.0
    e_n = (seen - expected) / reach
    without_loss = expected / (COVERAGE * math.hypot(relative, ride_standard_pct, u_expected))
    kept = 1.0 - expected / 100.0
    return LossVerdict(
        verdict="agrees" if abs(e_n) <= 1.0 else "does not agree",
        e_n=e_n,
        seen=around(seen, COVERAGE * u_seen),
        expected=around(expected, COVERAGE * u_expected),
        expected_hub_w=around(
            pedals_w * kept, pedals_w * COVERAGE * math.hypot(kept * relative, u_expected) / 100.0
        ),
        equal_averages=abs(seen) <= max(COVERAGE * ride_standard_pct, EQUAL_PCT),
        could_tell_no_loss=without_loss > 1.0,
    )
