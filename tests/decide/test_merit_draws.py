"""Draws of merits within what is known of the figures."""

import numpy as np
import pytest

from spindlewise.decide.merit_draws import HELD, NORMAL, UNIFORM, SpreadMerits
from spindlewise.decide.table import MeritTable

LOW = np.array([[0.2, 0.0], [0.1, 0.5], [0.4, 0.3]])
EXPECTED = np.array([[0.3, 0.0], [0.3, 0.5], [0.4, 0.5]])
HIGH = np.array([[0.6, 1.0], [0.5, 0.5], [0.4, 0.7]])
TABLE = MeritTable(("avocet", "dunlin", "heron"), ("price", "weight"), LOW, EXPECTED, HIGH)
KINDS = np.array([[NORMAL, UNIFORM], [NORMAL, NORMAL], [NORMAL, HELD]], dtype=np.int8)
DRAWS = 40_000


def drawn(criterion: int, kinds=KINDS):
    return SpreadMerits(TABLE, kinds).draw(np.random.Generator(np.random.SFC64(20240101)), criterion, DRAWS)


def test_only_what_is_not_held_is_drawn() -> None:
    rows, merits = drawn(0)
    assert rows.tolist() == [0, 1], "the heron's low is its high, whatever kind was given"
    assert merits.shape == (2, DRAWS)
    assert drawn(1)[0].tolist() == [0]


def test_nothing_drawn_is_none() -> None:
    assert drawn(0, np.zeros((3, 2), dtype=np.int8)) is None


def test_a_normal_draw_stays_between_low_and_high_with_the_expected_as_its_middle() -> None:
    _, (leaning, even) = drawn(0)

    for merits, low, expected, high in ((leaning, 0.2, 0.3, 0.6), (even, 0.1, 0.3, 0.5)):
        assert merits.min() == pytest.approx(low)
        assert merits.max() == pytest.approx(high)
        half = 4 * 0.5 / DRAWS**0.5
        assert (merits < expected).mean() == pytest.approx(0.5, abs=half)
        # one standard deviation to either side holds 34.13 % each
        assert (merits < expected - (expected - low) / 2).mean() == pytest.approx(0.1587, abs=half)
        assert (merits > expected + (high - expected) / 2).mean() == pytest.approx(0.1587, abs=half)
        assert (merits == merits.max()).mean() == pytest.approx(0.0228, abs=half / 3)


def test_an_unknown_is_as_likely_anywhere_on_its_span() -> None:
    _, (merits,) = drawn(1)

    assert np.histogram(merits, bins=4, range=(0.0, 1.0))[0] / DRAWS == pytest.approx(
        0.25, abs=4 * (0.25 * 0.75 / DRAWS) ** 0.5
    )


def test_both_kinds_can_meet_on_one_criterion() -> None:
    kinds = np.array([[UNIFORM, HELD], [NORMAL, HELD], [HELD, HELD]], dtype=np.int8)

    rows, merits = drawn(0, kinds)

    assert rows.tolist() == [1, 0]
    assert merits[0].mean() == pytest.approx(0.3, abs=0.002)
    assert merits[1].mean() == pytest.approx(0.4, abs=0.003)


@pytest.mark.parametrize("kinds", [np.zeros((2, 2)), np.full((3, 2), 3)])
def test_kinds_that_do_not_fit_are_refused(kinds) -> None:
    with pytest.raises(ValueError, match="one a cell is needed"):
        SpreadMerits(TABLE, kinds)
