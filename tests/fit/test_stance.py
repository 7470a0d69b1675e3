"""Stance width after a swap, and what washers cost in thread."""

from __future__ import annotations

import math

import pytest

from spindlewise.fit.missing import MissingFigures
from spindlewise.fit.stance import Pedals, StanceChange, stance_change, stance_width_mm, washer_cautions


def test_both_sides_add_up_and_washers_count_on_their_own_side() -> None:
    old = Pedals("plain", 53.0, 53.0, right_washers_mm=1.5, offset_plus_minus_mm=0.3)
    new = Pedals("wide", 55.0, 54.0, left_washers_mm=1.0, offset_plus_minus_mm=0.4)
    found = stance_change(old, new)
    assert isinstance(found, StanceChange)
    assert (found.left_mm, found.right_mm, found.width_mm) == (3.0, -0.5, 2.5)
    assert found.plus_minus_mm == pytest.approx(0.5 * math.sqrt(2))


def test_the_q_factor_cancels() -> None:
    old, new = Pedals("plain", 53.0, 53.0), Pedals("wide", 55.0, 54.0)
    before, after = stance_width_mm(146.0, old), stance_width_mm(146.0, new)
    found = stance_change(old, new)
    assert isinstance(found, StanceChange)
    assert (before, after) == (252.0, 255.0)
    assert found.width_mm == 3.0


def test_the_same_pedal_with_washers_moves_by_the_washers_though_its_offset_is_unknown() -> None:
    plain = Pedals("plain", None, None, offset_plus_minus_mm=1.0)
    washed = Pedals("plain", None, None, left_washers_mm=1.0, right_washers_mm=2.0)
    assert stance_change(plain, washed) == StanceChange(3.0, 1.0, 2.0, 0.0)


def test_washers_that_are_taken_out_narrow_the_stance_on_their_own_side() -> None:
    """2 mm under the left pedal and 1 mm under the right go; only 0.5 mm on the left comes back."""
    washed = Pedals("plain", 53.0, 53.0, left_washers_mm=2.0, right_washers_mm=1.0)
    found = stance_change(washed, Pedals("wide", 54.0, 54.0, left_washers_mm=0.5))
    assert isinstance(found, StanceChange)
    assert (found.left_mm, found.right_mm, found.width_mm) == (-0.5, 0.0, -0.5)


def test_unknown_offsets_are_named() -> None:
    found = stance_change(Pedals("plain", None, 53.0), Pedals("wide", 55.0, None))
    assert isinstance(found, MissingFigures)
    assert [(m.product, m.figure) for m in found.missing] == [
        ("plain", "left offset"),
        ("wide", "right offset"),
    ]


@pytest.mark.parametrize("offsets", [(None, 53.0), (53.0, None)])
def test_no_width_without_both_offsets(offsets: tuple[float | None, float | None]) -> None:
    assert stance_width_mm(146.0, Pedals("plain", *offsets)) is None


def test_no_washers_no_caution() -> None:
    assert washer_cautions(Pedals("plain", 53.0, 53.0, thread_mm=12.0)) == ()


def test_each_washer_is_cautioned_with_its_numbers() -> None:
    left, right = washer_cautions(Pedals("plain", 53.0, 53.0, 2.54, 14.0, thread_mm=12.0))
    assert (left.foot, left.washers_mm, left.thread_mm) == ("left", 2.54, 12.0)
    assert left.turns_lost == pytest.approx(2.0)
    assert left.thread_left_mm == pytest.approx(9.46)
    assert (right.foot, right.thread_left_mm) == ("right", 0.0)


def test_an_unknown_thread_leaves_an_unknown_rest() -> None:
    (only,) = washer_cautions(Pedals("plain", 53.0, 53.0, 1.0))
    assert (only.thread_mm, only.thread_left_mm) == (None, None)


def test_washers_below_zero_and_endless_offsets_are_refused() -> None:
    with pytest.raises(ValueError, match="left washers is -1"):
        Pedals("plain", 53.0, 53.0, -1.0)
    with pytest.raises(ValueError, match="right offset is inf"):
        Pedals("plain", None, math.inf)


@pytest.mark.parametrize(
    ("figures", "named"),
    [
        ({"left_washers_mm": -1.0}, "left washers is -1"),
        ({"right_washers_mm": -1.0}, "right washers is -1"),
        ({"thread_mm": -12.0}, "thread is -12"),
        ({"offset_plus_minus_mm": math.nan}, "plus-minus is nan"),
        ({"left_offset_mm": -math.inf}, "the left offset is -inf"),
        ({"right_offset_mm": math.nan}, "the right offset is nan"),
    ],
)
def test_the_figure_that_cannot_be_is_named(figures: dict[str, float], named: str) -> None:
    with pytest.raises(ValueError, match=f"plain: {named}|plain: the {named}"):
        Pedals(**{"product": "plain", "left_offset_mm": 53.0, "right_offset_mm": 53.0, **figures})


def test_washers_of_both_sides_widen_the_stance() -> None:
    assert stance_width_mm(146.0, Pedals("plain", 53.0, 54.0, 1.0, 2.5)) == 256.5


def test_a_missing_offset_says_what_it_is_needed_for() -> None:
    found = stance_change(Pedals("plain", None, 53.0), Pedals("wide", 55.0, 54.0))
    assert isinstance(found, MissingFigures)
    assert [m.because for m in found.missing] == ["the pedal is changed"]
