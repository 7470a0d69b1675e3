import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.decide.curves import Curve, Steps, merits_at

PEAK = Curve((0.0, 10.0, 20.0), (0.0, 1.0, 0.0))


def test_a_curve_is_exact_at_its_knots_straight_between_and_flat_outside():
    curve = Curve((100.0, 200.0, 400.0), (1.0, 0.7, 0.0))
    assert curve.at([100, 200, 400]).tolist() == [1.0, 0.7, 0.0]
    assert curve.at([-np.inf, 50, 500, np.inf]).tolist() == [1.0, 1.0, 0.0, 0.0]
    assert curve.at([150, 300]).tolist() == pytest.approx([0.85, 0.35])
    assert curve.at(300).shape == ()
    assert curve.at([[150.0, 300.0]]).shape == (1, 2)


def test_a_peak_inside_an_interval_counts():
    assert PEAK.over(5, 15) == (0.5, 1.0)
    assert PEAK.over(5, 8) == (0.5, 0.8)
    assert PEAK.over(-5, 30) == (0.0, 1.0)
    assert PEAK.over(10, 10) == (1.0, 1.0)
    assert Curve((0.0, 10.0, 20.0), (1.0, 0.0, 1.0)).over(5, 15) == (0.0, 0.5)


@pytest.mark.parametrize(
    ("merits", "sense"),
    [
        ((1.0, 0.5, 0.0), "less"),
        ((1.0, 1.0, 0.0), "less"),
        ((0.0, 0.0, 1.0), "more"),
        ((0.0, 1.0, 0.0), "mixed"),
        ((1.0, 0.0, 1.0), "mixed"),
        ((0.5, 0.5, 0.5), "mixed"),
    ],
)
def test_the_sense_of_a_curve(merits, sense):
    assert Curve((1.0, 2.0, 3.0), merits).sense == sense


@pytest.mark.parametrize(
    ("x", "merit", "message"),
    [
        ((1.0, 2.0), (1.0,), "2 knots and 1 merits"),
        ((), (), "at least one"),
        ((1.0, 1.0), (1.0, 0.0), "rise strictly"),
        ((2.0, 1.0), (1.0, 0.0), "rise strictly"),
        ((1.0, float("nan")), (1.0, 0.0), "finite"),
        ((1.0, float("inf")), (1.0, 0.0), "finite"),
        ((1.0, 2.0), (1.1, 0.0), "in 0 to 1"),
        ((1.0, 2.0), (1.0, float("nan")), "in 0 to 1"),
    ],
)
def test_knots_that_make_no_curve_are_refused(x, merit, message):
    with pytest.raises(ValueError, match=message):
        Curve(x, merit)


def test_what_is_no_figure_has_no_merit():
    with pytest.raises(
        ValueError, match=r"^a merit was asked for NaN; an unknown figure takes the plausible span instead$"
    ):
        PEAK.at([1.0, float("nan")])
    with pytest.raises(ValueError, match="low <= high"):
        PEAK.over(2, 1)
    with pytest.raises(ValueError, match="low <= high"):
        PEAK.over(float("nan"), 1)


def test_a_single_knot_is_flat():
    assert Curve((5.0,), (0.3,)).at([0, 5, 9]).tolist() == [0.3, 0.3, 0.3]


@pytest.mark.parametrize("knots", [2, 3, 5])
@pytest.mark.parametrize("n", [0, 1, 3, 5000])
def test_many_merits_at_once_are_those_of_each_curve(knots, n):
    rng = np.random.default_rng(knots)
    curves = [
        Curve(tuple(np.sort(rng.random(knots)).tolist()), tuple(rng.random(knots).tolist())) for _ in range(4)
    ]
    values = rng.random((n, 4)) * 2 - 0.5
    expected = np.column_stack([curve.at(values[:, k]) for k, curve in enumerate(curves)])
    assert np.allclose(merits_at(curves, values), expected, rtol=0, atol=1e-14)
    assert np.allclose(merits_at(curves, np.asfortranarray(values)), expected, rtol=0, atol=1e-14)


def test_many_merits_stay_within_those_of_the_knots():
    curve = Curve((0.1, 0.7), (1.0, 0.1))
    merits = merits_at([curve] * 3, np.random.default_rng(1).random((3000, 3)))
    assert merits.min() >= 0.1
    assert merits.max() <= 1.0


@pytest.mark.parametrize("curve", [PEAK, Curve((0.0, 1.0), (0.0, 1.0))])
def test_many_merits_refuse_nan_and_other_shapes(curve):
    with pytest.raises(ValueError, match="NaN"):
        merits_at([curve], np.array([[1.0], [float("nan")]]))
    with pytest.raises(ValueError, match="one column a curve"):
        merits_at([curve], np.array([[1.0, 2.0]]))
    with pytest.raises(ValueError, match="one column a curve"):
        merits_at([curve], np.array([1.0]))


def test_steps_give_merit_by_name():
    steps = Steps({"both sides": 1.0, "one side doubled": 0.4, "nothing": 0.0})
    assert steps.at(["one side doubled", "both sides"]).tolist() == [0.4, 1.0]
    assert Steps({"yes": 1, "no": 0}).at(["yes"]).dtype == np.float64
    assert steps.over() == (0.0, 1.0)
    assert steps.over(["both sides", "one side doubled"]) == (0.4, 1.0)
    with pytest.raises(ValueError, match="no step is called one side; there are both sides, nothing"):
        steps.at(["one side"])
    with pytest.raises(ValueError, match="no name remains"):
        steps.over([])


def test_steps_are_kept_as_given_and_compare_by_their_merits():
    merits = {"yes": 1.0, "no": 0.0}
    steps = Steps(merits)
    merits["no"] = 0.5
    assert steps == Steps({"no": 0.0, "yes": 1.0})
    with pytest.raises(ValueError, match="without a single name"):
        Steps({})
    with pytest.raises(ValueError, match="merit of yes is outside"):
        Steps({"yes": 1.5, "no": 0.0})


def test_rounding_does_not_carry_a_merit_past_the_knots():
    # straight interpolation just below 7.5 gives 0.9000000000000001, and 0.09999999999999998 at 7.6
    assert Curve((1.4, 7.5), (0.3, 0.9)).at(np.nextafter(7.5, 0)) == 0.9
    assert merits_at([Curve((7.2, 7.6), (0.9, 0.1))], np.array([[7.6]])).tolist() == [[0.1]]
    # the same upwards, where the straight line gives 0.7000000000000001 at its right knot
    assert merits_at([Curve((0.1, 0.4), (0.0, 0.7))], np.array([[0.4]])).tolist() == [[0.7]]


def test_rounding_does_not_carry_many_merits_past_bent_curves_either():
    # just below the middle knots straight interpolation gives 0.9000000000000001 and 0.09999999999999998
    up, down = Curve((0.1, 4.0, 6.0), (0.3, 0.9, 0.6)), Curve((0.1, 1.0, 3.0), (0.6, 0.1, 0.35))
    figures = np.nextafter([[4.0, 1.0]], 0)
    assert merits_at([up, down], figures).tolist() == [[0.9, 0.1]]


def test_a_warranty_without_end_is_read_off_curves_rising_falling_and_flat():
    # years of warranty: more is better, less is better, and a buyer to whom it is all one
    curves = [Curve((2.0, 10.0), merits) for merits in ((0.0, 1.0), (1.0, 0.0), (0.5, 0.5))]
    for years, merits in ((math.inf, [1.0, 0.0, 0.5]), (-math.inf, [0.0, 1.0, 0.5])):
        assert merits_at(curves, np.full((1, 3), years)).tolist() == [merits]


def test_what_no_steps_can_be_read_from_is_said_in_whole_words():
    with pytest.raises(ValueError, match=r"^steps without a single name; at least one is needed$"):
        Steps({})
    with pytest.raises(ValueError, match=r"^the merit of doubled, none is outside 0 to 1$"):
        Steps({"none": -0.1, "doubled": 1.1, "both": 1.0})
    steps = Steps({"both sides": 1.0, "nothing": 0.0})
    with pytest.raises(ValueError, match=r"^no step is called all, half; there are both sides, nothing$"):
        steps.at(["half", "all"])
    with pytest.raises(ValueError, match=r"^no name remains possible; name at least one$"):
        steps.over([])
    with pytest.raises(
        ValueError, match=r"^a merit was asked for NaN; an unknown figure takes the plausible span"
    ):
        merits_at((PEAK,), np.array([[np.nan]]))


@given(
    knots=st.lists(
        st.tuples(st.floats(-1e6, 1e6), st.floats(0, 1)), min_size=1, max_size=6, unique_by=lambda k: k[0]
    ),
    figures=st.lists(st.floats(-2e6, 2e6), max_size=20),
)
def test_one_figure_at_a_time_has_the_same_bits_as_many(knots, figures):
    x, merit = zip(*sorted(knots), strict=True)
    curve = Curve(x, merit)
    asked = [*figures, *x, -math.inf, math.inf]
    assert [curve.of(figure) for figure in asked] == curve.at(asked).tolist()


def test_one_figure_that_is_none_has_no_merit():
    with pytest.raises(
        ValueError, match=r"^a merit was asked for NaN; an unknown figure takes the plausible span instead$"
    ):
        Curve((1.0, 2.0), (0.0, 1.0)).of(math.nan)
