"""Uncertainty of the reading: what each known cause adds to it in this reading mode."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import get_args

from spindlewise.reception.budget import COVERAGE, Budget, Contribution, combine, largest
from spindlewise.reception.crank_setting import CrankSettingError
from spindlewise.reception.doubled_side import DoubledError
from spindlewise.reception.reading_mode import Mode
from spindlewise.reception.unmeasured import Unmeasured, not_measured

_MODES: tuple[str, ...] = get_args(Mode)


@dataclass(frozen=True, slots=True)
class BenchEvidence:
    """What the bench saw of the product: mean difference from the reference, and one standard deviation.

    Percent of the reference, total power against total power. `bias_plus_minus_pct` is the half-width within
    which the bench knows the bias. Raises ValueError for a figure that is not finite, or a spread below zero.
    """

    bias_pct: float
    spread_pct: float
    bias_plus_minus_pct: float = 0.0

    def __post_init__(self) -> None:
        if not math.isfinite(self.bias_pct):
            raise ValueError(f"bias_pct is {self.bias_pct}; it is finite, negative where the reading is low")
        _not_negative("spread_pct", self.spread_pct)
        _not_negative("bias_plus_minus_pct", self.bias_plus_minus_pct)


def reading_uncertainty(
    mode: Mode,
    *,
    tolerance_pct: float | None,
    bench: BenchEvidence | None = None,
    doubled: DoubledError | None = None,
    temperature_pct: float | None = None,
    temperature_change_c: float = 10.0,
    crank: CrankSettingError | None = None,
    unmeasured: Unmeasured | None = None,
) -> Budget:
    """Give the expanded uncertainty (k = 2) of the reading in this mode, with its table of causes.

    - `tolerance_pct`, the maker's plus-minus, is a rectangular distribution, a / sqrt 3 (JCGM 100, 4.3.7).
      A tolerance of each side is taken as that of the total: errors of one maker's two sides may go together.
    - `bench`, where it exists, stands in place of the claim, for better or worse: what was seen replaces
      what was promised. Its bias stays uncorrected; its spread is a standard deviation (type A). It must be
      of both sides, or of the measured side against itself: a bias that holds the bench rider's own imbalance
      would count a balance twice.
    - `doubled` (for `one side doubled`, else ignored) leaves the mean error of the range as a bias, and the
      range itself as a standard uncertainty.
    - `temperature_pct` is the drift over ten degrees without a new zero offset, rectangular, in proportion
      for another `temperature_change_c`.
    - `crank` is a fixed bias. Without it the crank length is taken as rightly set, which costs nothing to do.
    - `unmeasured` says what is plausible of the temperature's drift, and of the spread about a claim that no
      bench has tried. While they are not known they count by the least kind end (see `not_measured`), and the
      kind end is in `expanded_low_pct`. Without it they are left out, and named.

    Standard uncertainties add as squares, biases with their signs (first order, JCGM 100, 5.1.2). A rider
    cannot correct the biases, so the error lies in bias - k u to bias + k u, and the stated figure is
    |bias| + k u: the mean bias stays a bias and its spread a variance as in JCGM 100, F.2.4.5 (from memory),
    the sum is the outer end of Phillips, Eberhardt and Parry 1997 (J Res NIST 102:577).
    Raises ValueError for a mode that is none and for a negative or unending figure.

    >>> budget = reading_uncertainty("both sides", tolerance_pct=1.5)
    >>> round(budget.expanded_pct, 3), budget.largest
    (1.732, 'claimed tolerance')
    >>> reading_uncertainty("both sides", tolerance_pct=None).missing
    ('claimed tolerance',)
    """
    if mode not in _MODES:
        raise ValueError(f"the mode is {mode!r}; it is one of: {', '.join(_MODES)}")
    if mode in ("nothing", "unknown", "one side only"):
        return _unscorable(mode)
    causes, missing = _product_causes(tolerance_pct, bench, unmeasured)
    half_range_pct = 0.0
    if mode == "one side doubled" and doubled is None:
        missing.append("doubled side")
    elif mode == "one side doubled" and doubled is not None:
        causes.append(_doubled_cause(doubled))
        half_range_pct = (doubled.high_pct - doubled.low_pct) / 2
    causes += _setting_causes(temperature_pct, temperature_change_c, crank, unmeasured)
    left_out = ("temperature",) if temperature_pct is None and unmeasured is None else ()
    if missing:
        return _without_figure(tuple(causes), tuple(missing), left_out, "a figure is missing")
    bias, combined = combine(causes)
    expanded = abs(bias) + COVERAGE * combined
    others = [cause for cause in causes if cause.name != "doubled side"]
    _, fixed_balance = combine(others)
    at_its_kindest = math.hypot(*(cause.least_pct for cause in others))
    nearest = max(abs(bias) - half_range_pct, 0.0)
    kindest = nearest + COVERAGE * at_its_kindest
    least_kind = abs(bias) + half_range_pct + COVERAGE * fixed_balance
    return Budget(
        expanded_pct=expanded,
        combined_pct=combined,
        bias_pct=bias,
        low_error_pct=bias - COVERAGE * combined,
        high_error_pct=bias + COVERAGE * combined,
        expanded_low_pct=min(kindest, expanded),
        # the normal rule is too wide for a lone rectangle, and no range may leave out its own expected figure
        expanded_high_pct=max(least_kind, expanded),
        contributions=tuple(causes),
        largest=largest(causes),
        missing=(),
        left_out=left_out,
        note="an uncorrected bias is in the figure" if bias else "",
        known_low_pct=min(nearest + COVERAGE * fixed_balance, expanded),
    )


def _product_causes(
    tolerance_pct: float | None, bench: BenchEvidence | None, unmeasured: Unmeasured | None
) -> tuple[list[Contribution], list[str]]:
    if tolerance_pct is not None:
        _not_negative("tolerance_pct", tolerance_pct)
    if bench is not None:
        in_place = (
            "in place of the claimed tolerance" if tolerance_pct is not None else "no tolerance is claimed"
        )
        known_to = _rectangular(bench.bias_plus_minus_pct)
        return [
            Contribution("bench bias", known_to, "rectangular", in_place, bench.bias_pct),
            Contribution("bench spread", bench.spread_pct, "normal", "one standard deviation at the bench"),
        ], []
    if tolerance_pct is None:
        return [], ["claimed tolerance"]
    note = "claimed plus-minus over root three"
    claim = Contribution("claimed tolerance", _rectangular(tolerance_pct), "rectangular", note)
    if unmeasured is None:
        return [claim], []
    spread = not_measured("bench spread", unmeasured.bench_spread, "no bench ride")
    return [claim, spread], []


def _doubled_cause(doubled: DoubledError) -> Contribution:
    whose = (
        "the buyer's own balance" if doubled.basis == "buyer" else "a population's balance, not the buyer's"
    )
    return Contribution("doubled side", doubled.standard_pct, doubled.spread, whose, doubled.expected_pct)


def _setting_causes(
    temperature_pct: float | None,
    change_c: float,
    crank: CrankSettingError | None,
    unmeasured: Unmeasured | None,
) -> list[Contribution]:
    causes = []
    _not_negative("temperature_change_c", change_c)
    degrees = f"{change_c:g} degrees without a new zero offset"
    if temperature_pct is not None:
        _not_negative("temperature_pct", temperature_pct)
        drift = _rectangular(temperature_pct * change_c / 10)
        causes.append(Contribution("temperature", drift, "rectangular", degrees))
    elif unmeasured is not None:
        divisor = math.sqrt(3)
        plausible = unmeasured.temperature.over(change_c)
        causes.append(not_measured("temperature", plausible, degrees, divisor))
    if crank is not None:
        note = f"{crank.set_mm:g} mm set, {crank.ridden_mm:g} mm ridden"
        causes.append(Contribution("crank length setting", 0.0, "fixed", note, crank.error_pct))
    return causes


def _unscorable(mode: Mode) -> Budget:
    if mode == "unknown":
        return _without_figure((), ("reading mode",), (), "what arrives is unknown")
    note = "one side is not a total power" if mode == "one side only" else "nothing arrives"
    return _without_figure((), (), (), note)


def _without_figure(
    causes: tuple[Contribution, ...], missing: tuple[str, ...], left_out: tuple[str, ...], note: str
) -> Budget:
    return Budget(None, None, None, None, None, None, None, causes, largest(causes), missing, left_out, note)


def _rectangular(half_width: float) -> float:
    return half_width / math.sqrt(3)


def _not_negative(name: str, figure: float) -> None:
    if not 0 <= figure < math.inf:
        raise ValueError(f"{name} is {figure}; it is zero or more, and finite")
