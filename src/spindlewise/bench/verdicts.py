"""Three verdicts on a ride, kept apart: agreement, data quality, plausibility."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from spindlewise.bench.agreement import Agreement
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.expected_loss import LossVerdict
from spindlewise.bench.three_meters import ThreeMeters

Subject = Literal["agreement", "data quality", "plausibility"]
Finding = Literal[
    "agree",
    "depends on power",
    "differ",
    "good",
    "usable",
    "not enough",
    "plausible",
    "implausible",
    "cannot tell",
]
"""What a verdict says: three of agreement, three of quality, two of plausibility; and `cannot tell`."""

LEAST_COMPARED_S, LEAST_EFFECTIVE = 600, 30
"""Ten minutes of common seconds, worth thirty independent readings: less is not enough for any verdict."""

MOST_MISSING = 0.05
"""A ride that lacks more of its seconds than this is usable, not good."""


@dataclass(frozen=True, slots=True)
class Number:
    """A figure behind a verdict, with its unit and, where it has one, its interval."""

    name: str
    value: float
    unit: str
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class Verdict:
    """What is said of one subject, the reasons in plain words, and the numbers behind them.

    A verdict of one ride is of the units that were ridden: it scores no product, and other units may differ.
    """

    subject: Subject
    says: Finding
    because: tuple[str, ...]
    numbers: tuple[Number, ...]


def agreement_verdict(found: Agreement, tolerances_pct: tuple[float, float] | None) -> Verdict:
    """Say whether two meters agree within both tolerances, None where nobody states them.

    The two tolerances combine as the root of the sum of squares. `agree` where the whole interval of the mean
    difference lies within, `differ` where it lies outside, else `cannot tell`. Where the average is not
    proved to differ, but the fitted difference at low or high power lies outside and its change in percent is
    no accident, it `depends on power`: what averages out may be wrong everywhere. That two meters agree says
    nothing of either's truth; that they differ, nothing of which is wrong. Raises ValueError for tolerances
    that are not both above zero.
    """
    pct = found.difference_pct
    numbers = [_number("mean difference", found.mean_difference, "W")]
    if pct is None:
        return Verdict("agreement", "cannot tell", ("there is no power to compare",), tuple(numbers))
    numbers.append(_number(f"mean difference, percent of {found.percent_of}", pct, "%"))
    numbers += [_number(f"{end} limit", limit, "W") for end, limit in _limits(found)]
    ends = [] if found.slope is None else [found.slope.pct_at_low, found.slope.pct_at_high]
    if found.slope is not None:
        numbers.append(_number("slope of the difference", found.slope.slope.times(100.0), "W per 100 W"))
        for end, watts, at in (
            ("low", found.slope.at_low, found.slope.pct_at_low),
            ("high", found.slope.at_high, found.slope.pct_at_high),
        ):
            numbers += [Number(f"{end} power", watts, "W"), Number(f"difference at {end} power", at, "%")]
    if tolerances_pct is None:
        return Verdict("agreement", "cannot tell", ("a tolerance is not stated",), tuple(numbers))
    if not all(0.0 < part < math.inf for part in tolerances_pct):
        raise ValueError(f"tolerances of {tolerances_pct} %; both are above 0")
    reach = math.hypot(*tolerances_pct)
    numbers.append(Number("both tolerances together", reach, "%"))
    says, because = _against(pct, reach)
    leans = found.slope is not None and found.slope.percent_changes and any(abs(at) > reach for at in ends)
    if says != "differ" and leans:
        says, because = "depends on power", "the difference changes with power, beyond the tolerances"
    return Verdict("agreement", says, (because,), tuple(numbers))


def quality_verdict(
    found: Agreement,
    *,
    recorded_s: int,
    lag_known: bool,
    missing: Sequence[str] = (),
    void: str | None = None,
) -> Verdict:
    """Say whether the recordings carry a verdict at all.

    `not enough` for a void ride, an unknown lag, fewer than 600 common seconds or fewer than 30 effective
    readings; `usable` where over 5 % of `recorded_s` are not compared, the differences drift throughout, or
    something is `missing` from what should have been noted before the ride; else `good`.
    Raises ValueError where more seconds were compared than recorded.
    """
    if recorded_s < found.count:
        raise ValueError(f"{found.count} s compared of {recorded_s} s recorded; it cannot be more")
    share = 1.0 - found.count / recorded_s
    fatal = [
        reason
        for reason, holds in (
            (f"the ride is void: {void}", void is not None),
            ("the lag between the recordings is not known", not lag_known),
            (f"fewer than {LEAST_COMPARED_S} seconds in common", found.count < LEAST_COMPARED_S),
            ("neighbouring readings hang together for too long", found.limits.effective < LEAST_EFFECTIVE),
        )
        if holds
    ]
    flaws = [
        reason
        for reason, holds in (
            ("seconds are missing", share > MOST_MISSING),
            ("the difference drifts throughout the ride", not found.limits.settled),
        )
        if holds
    ] + [f"not noted: {what}" for what in missing]
    numbers = (
        Number("compared", found.count, "s"),
        Number("not compared", 100.0 * share, "%"),
        Number("effective readings", found.limits.effective, ""),
    )
    says: Finding = "not enough" if fatal else "usable" if flaws else "good"
    return Verdict("data quality", says, (*fatal, *flaws), numbers)


def plausibility_verdict(loss: LossVerdict | None = None, three: ThreeMeters | None = None) -> Verdict:
    """Say whether the readings fit what is known beside them: the loss of a chain, and a third meter.

    `implausible` where the loss seen does not agree with the loss expected; `plausible` where it does and no
    loss at all would have stood out; else `cannot tell`: with equal averages, with tolerances too wide to see
    a loss, or without a meter behind the chain. A third meter names the odd one out, which is a reason, and
    no verdict on who is right.
    """
    says: Finding = "cannot tell"
    because, numbers = [], []
    if loss is not None:
        numbers = [
            Number("E_n", loss.e_n, ""),
            _number("loss seen", loss.seen, "%"),
            _number("loss expected", loss.expected, "%"),
        ]
        if loss.equal_averages:
            because.append("equal averages with a chain between them are a finding, not a proof")
        if loss.verdict == "does not agree":
            says = "implausible"
            because.append("the loss seen does not agree with the loss expected")
        elif not loss.could_tell_no_loss:
            because.append("the tolerances are too wide to tell a loss from none")
        elif not loss.equal_averages:
            says = "plausible"
            because.append("the loss seen agrees with the loss expected")
    for by, told in _odd(three):
        because.append(f"the odd one out by {by} is {told}")
    return Verdict(
        "plausibility", says, tuple(because) or ("there is nothing to hold it against",), tuple(numbers)
    )


def _number(name: str, estimate: Estimate, unit: str) -> Number:
    return Number(name, estimate.value, unit, estimate.low, estimate.high)


def _limits(found: Agreement) -> tuple[tuple[str, Estimate], ...]:
    return (("lower", found.limits.lower), ("upper", found.limits.upper))


def _against(pct: Estimate, reach: float) -> tuple[Finding, str]:
    if -reach <= pct.low and pct.high <= reach:
        return "agree", "the mean difference lies within both tolerances"
    if pct.low > reach or pct.high < -reach:
        return "differ", "the mean difference lies outside both tolerances"
    return "cannot tell", "the interval of the mean difference reaches across the tolerances"


def _odd(three: ThreeMeters | None) -> list[tuple[str, str]]:
    if three is None:
        return []
    by = (("level", three.by_level), ("scale", three.by_scale), ("noise", three.by_noise))
    return [(name, told.odd) for name, told in by if told.odd is not None]
