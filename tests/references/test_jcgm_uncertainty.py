"""JCGM 100:2008 (GUM) and JCGM 101:2008: worked examples of combining uncertainties.

JCGM, Evaluation of measurement data: Guide to the expression of uncertainty in measurement, and Supplement 1,
Propagation of distributions using a Monte Carlo method. Figures from memory unless a comment says otherwise.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.stats import t

from spindlewise.reception.budget import COVERAGE, Contribution, combine
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty


def four_rectangles() -> list[Contribution]:
    return [Contribution(f"x{n}", 1.0, "rectangular", "half-width sqrt 3") for n in range(1, 5)]


def irwin_hall(x: float, n: int = 4) -> float:
    terms = ((-1) ** k * math.comb(n, k) * (x - k) ** n for k in range(int(x) + 1))
    return sum(terms) / math.factorial(n)


def exact_95_percent_half_width() -> float:
    """Of the sum of four rectangles of standard deviation 1, from the Irwin-Hall distribution."""
    return float(brentq(lambda x: irwin_hall(x) - 0.975, 2, 4) - 2) * 2 * math.sqrt(3)


def test_jcgm_101_clause_9_2_normal_rule_against_exact() -> None:
    """Sum of four rectangles: +-3.92 by the normal rule, +-3.88 exactly (computed: 3.879406741)."""
    _, combined = combine(four_rectangles())

    assert combined == pytest.approx(2)
    assert round(1.959963984540054 * combined, 2) == 3.92
    assert exact_95_percent_half_width() == pytest.approx(3.87940674134783, abs=1e-9)
    assert round(exact_95_percent_half_width(), 2) == 3.88
    # a whole k of 2 stands a little above both: the budget does not promise too much
    assert COVERAGE * combined == pytest.approx(4)


def test_jcgm_101_clause_9_2_by_monte_carlo() -> None:
    n = 400_000
    sums = np.random.default_rng(101).uniform(-math.sqrt(3), math.sqrt(3), (4, n)).sum(axis=0)

    _, combined = combine(four_rectangles())

    assert sums.std() == pytest.approx(combined, abs=4 * combined / math.sqrt(2 * n))
    assert np.quantile(np.abs(sums), 0.95) == pytest.approx(exact_95_percent_half_width(), abs=0.02)


def test_gum_h_1_end_gauge() -> None:
    """Standard 25 nm, comparison 9.7 nm, expansion 2.9 nm, temperature difference 16.6 nm: together 32 nm.

    Expanded at 99 % with 16 degrees of freedom: 93 nm.
    """
    parts_nm = {"standard": 25.0, "comparison": 9.7, "expansion": 2.9, "temperature": 16.6}
    freedom = {"standard": 18.0, "comparison": 25.6, "expansion": 50.0, "temperature": 2.0}

    _, combined_nm = combine([Contribution(name, nm, "normal", "") for name, nm in parts_nm.items()])

    assert round(combined_nm) == 32
    effective = combined_nm**4 / sum(nm**4 / freedom[name] for name, nm in parts_nm.items())
    assert math.floor(effective) == 16
    assert round(float(t.ppf(0.995, 16)) * round(combined_nm)) == 93


def test_gum_4_3_7_rectangular_half_width() -> None:
    """A half-width a, all values within it equally likely: standard uncertainty a / sqrt 3."""
    draws = np.random.default_rng(437).uniform(-2.0, 2.0, 400_000)

    budget = reading_uncertainty("both sides", tolerance_pct=2.0)

    assert budget.combined_pct == pytest.approx(draws.std(), rel=0.005)


@pytest.mark.parametrize(("bias", "low", "high"), [(-4.0, -6.0, -2.0), (4.0, 2.0, 6.0), (0.5, -1.5, 2.5)])
def test_phillips_eberhardt_parry_1997_uncorrected_bias(bias: float, low: float, high: float) -> None:
    """Guidelines for expressing the uncertainty of measurement results containing uncorrected bias.

    J Res NIST 102:577-585: the interval is not symmetric about the reading (abstract seen). Here the error's
    interval is bias - k u to bias + k u, and one figure for both ends is the farther end.
    """
    budget = reading_uncertainty("both sides", tolerance_pct=None, bench=BenchEvidence(bias, 1.0))

    assert (budget.low_error_pct, budget.high_error_pct) == pytest.approx((low, high))
    assert budget.expanded_pct == pytest.approx(max(abs(low), abs(high)))
