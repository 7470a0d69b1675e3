"""How two meters agree over a ride."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.agreement import agreement, with_and_without_zeros

NAMES = ("hub", "pedals")


def test_a_ride_of_known_truth_is_recovered() -> None:
    power = stepped_power(2400)
    noise = autoregressive(np.random.default_rng(10), 2, 2400, 0.85, 5.0)
    hub, pedals = power + noise[0], 1.02 * power - 1.0 + noise[1]
    found = agreement(pedals, hub, names=("pedals", "hub"), percent_of="hub")
    true = 0.02 * power.mean() - 1.0
    assert found.mean_difference.holds(true)
    assert found.difference_pct is not None
    assert found.difference_pct.holds(100.0 * true / power.mean())
    assert found.count == 2400
    assert found.limits.lower.value < true < found.limits.upper.value
    assert found.ratio is not None
    assert found.slope is not None


def test_the_denominator_is_always_named() -> None:
    hub, pedals = np.full(30, 232.0), np.full(30, 221.0)
    by = {
        of: agreement(pedals, hub, names=("pedals", "hub"), percent_of=of)
        for of in ("hub", "pedals", "mean of both")
    }
    figures = {of: each.difference_pct.value for of, each in by.items() if each.difference_pct}
    assert {of: round(pct, 1) for of, pct in figures.items()} == {
        "hub": -4.7,
        "pedals": -5.0,
        "mean of both": -4.9,
    }
    assert [each.percent_of for each in by.values()] == list(by)


def test_coasting_makes_two_figures() -> None:
    power = stepped_power(1200)
    hub, pedals = power.copy(), power + 5.0
    hub[::4] = pedals[::4] = 0.0
    found = with_and_without_zeros(pedals, hub, names=("pedals", "hub"), percent_of="hub")
    assert found.with_zeros is not None
    assert found.without_zeros is not None
    assert (found.with_zeros.zeros, found.without_zeros.zeros) == ("with zeros", "without zeros")
    assert found.with_zeros.mean_difference.value == pytest.approx(3.75)
    assert found.without_zeros.mean_difference.value == pytest.approx(5.0)
    assert (found.with_zeros.count, found.without_zeros.count) == (1200, 900)


def test_a_ride_of_nothing_but_coasting_has_one_figure() -> None:
    found = with_and_without_zeros(np.zeros(40), np.zeros(40), names=NAMES, percent_of="hub")
    assert found.without_zeros is None
    assert found.with_zeros is not None
    assert found.with_zeros.difference_pct is None
    assert found.with_zeros.ratio is None
    assert found.with_zeros.slope is None


def test_no_common_second_has_no_figure() -> None:
    nothing = np.full(40, np.nan)
    found = with_and_without_zeros(nothing, nothing, names=NAMES, percent_of="hub")
    assert (found.with_zeros, found.without_zeros) == (None, None)


@pytest.mark.parametrize(
    ("names", "percent_of"), [(("hub", "hub"), "hub"), (("hub", "pedals"), "trainer"), (("a", "b"), "")]
)
def test_an_unnamed_denominator_is_refused(names: tuple[str, str], percent_of: str) -> None:
    with pytest.raises(ValueError, match="the denominator is one of them or 'mean of both'"):
        agreement(np.ones(30), np.ones(30), names=names, percent_of=percent_of)
