"""Where the feet stand: pedals, washers and cranks kept apart."""

import pytest

import worlds
from spindlewise.answer.stance import stance

SPAN = {"span": "crank face to pedal centre"}
SLIM = worlds.product("slim", {"pedal_offset_mm": (worlds.seen(52.0, SPAN, plus_minus=0.3),)})
WIDE = worlds.product("wide", {"pedal_offset_mm": (worlds.seen(55.0, SPAN, plus_minus=0.4),)})
BARE = worlds.product("bare", {"pedal_offset_mm": "unknown"})


def found(old=SLIM, new=WIDE, **bike):
    return stance(old, new, worlds.DAY, worlds.buyer(bike=bike).bike)


def test_both_pedals_count_and_the_cranks_stay():
    moved = found()

    assert (moved.pedals.left_mm, moved.pedals.right_mm, moved.pedals.width_mm) == (3.0, 3.0, 6.0)
    assert moved.pedals.plus_minus_mm == pytest.approx((2 * 0.3**2 + 2 * 0.4**2) ** 0.5)
    assert moved.q_factor_mm == 0.0
    assert moved.width_mm == 6.0
    assert moved.washers == ()


def test_washers_may_differ_from_side_to_side():
    moved = found(
        washers_each_side_mm=1.0, new_washers_each_side_mm={"left": 0.0, "right": 1.27}, crank_mm=170.0
    )

    assert (moved.pedals.left_mm, moved.pedals.right_mm) == (2.0, pytest.approx(3.27))
    (caution,) = moved.washers
    assert (caution.foot, caution.turns_lost) == ("right", 1.0)


def test_new_cranks_add_their_own_q_factor():
    moved = found(q_factor_mm=146.0, new_q_factor_mm=149.5, crank_mm=170.0, new_crank_mm=165.0)

    assert moved.pedals.width_mm == 6.0
    assert (moved.q_factor_mm, moved.width_mm) == (3.5, 9.5)


@pytest.mark.parametrize(
    "bike",
    [
        {"crank_mm": 172.5, "new_crank_mm": 170.0},
        {"q_factor_mm": 146.0, "new_q_factor_mm": "unknown"},
        {"new_q_factor_mm": 150.0},
    ],
)
def test_new_cranks_of_an_unknown_q_factor_leave_the_whole_unknown(bike):
    moved = found(**bike)

    assert moved.pedals.width_mm == 6.0
    assert moved.q_factor_mm is moved.width_mm is None


def test_cranks_of_the_same_length_are_the_same_cranks():
    assert found(crank_mm=170.0, new_crank_mm=170.0).q_factor_mm == 0.0


def test_an_unknown_offset_is_named_for_each_side():
    moved = found(new=BARE)

    assert [lack.figure for lack in moved.pedals.missing] == ["left offset", "right offset"]
    assert moved.width_mm is None
