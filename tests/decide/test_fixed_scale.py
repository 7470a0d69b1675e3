import numpy as np
import pytest

from spindlewise.decide.curves import Curve
from spindlewise.decide.fixed_scale import ROWS_AT_ONCE, FixedScale

PRICE, WEIGHT = Curve((400.0, 1200.0), (1.0, 0.0)), Curve((200.0, 300.0, 500.0), (1.0, 0.5, 0.0))
NAMES = ("heron", "dunlin", "siskin")


WEIGHTS = np.array([3.0, 1.0])


def scale(*curves, names=NAMES):
    return FixedScale(names, curves or (PRICE, WEIGHT))


def test_the_better_figures_come_first_and_equal_ones_by_id():
    figures = np.array([[800.0, 250.0], [800.0, 250.0], [600.0, 400.0]])
    assert scale().order(figures, WEIGHTS).tolist() == [2, 1, 0]
    assert scale().scores(figures, WEIGHTS).tolist() == [56.25, 56.25, 62.5]


def test_what_a_safety_notice_holds_back_comes_last():
    figures = np.array([[400.0, 200.0], [900.0, 450.0], [800.0, 400.0]])
    assert scale().order(figures, WEIGHTS, [True, False, False]).tolist() == [2, 1, 0]
    assert scale().order(figures, WEIGHTS, [False, False, False]).tolist() == [0, 2, 1]


def test_one_object_orders_many_tables_of_figures():
    ready, rng = scale(), np.random.default_rng(2)
    for _ in range(20):
        figures = rng.uniform(100, 1300, (3, 2))
        before = figures.copy()
        assert ready.order(figures, WEIGHTS).tolist() == np.argsort(-ready.scores(figures, WEIGHTS)).tolist()
        assert np.array_equal(figures, before)


def test_scores_apart_by_less_than_a_billionth_of_a_point_are_equal():
    figures = np.array([[800.0 - 1e-10, 250.0], [800.0, 250.0], [800.0 + 1e-6, 250.0]])
    assert scale().order(figures, WEIGHTS).tolist() == [1, 0, 2]


def test_more_products_than_fit_into_a_block():
    n = 2 * ROWS_AT_ONCE + 5
    names = tuple(f"p{i:05}" for i in range(n))
    figures = np.column_stack((np.linspace(1200.0, 400.0, n), np.full(n, 300.0)))
    assert scale(names=names).order(figures, WEIGHTS).tolist() == list(range(n - 1, -1, -1))


@pytest.mark.parametrize("curves", [(PRICE, WEIGHT), (PRICE, PRICE)])
def test_a_figure_that_is_nan_is_refused_wherever_it_stands(curves):
    for place in np.ndindex(3, 2):
        figures = np.full((3, 2), 700.0)
        figures[place] = np.nan
        with pytest.raises(ValueError, match="asked for NaN"):
            scale(*curves).order(figures, WEIGHTS)
        with pytest.raises(ValueError, match="asked for NaN"):
            scale(*curves).scores(figures, WEIGHTS)
    with pytest.raises(ValueError, match="asked for NaN"):
        scale(*curves).order(np.array([[700.0, np.nan]] * 3), np.array([1.0, 0.0]))


def test_infinite_figures_lie_outside_the_knots():
    figures = np.array([[np.inf, 300.0], [-np.inf, 300.0], [800.0, 300.0]])
    assert scale().order(figures, WEIGHTS).tolist() == [1, 2, 0]


def test_no_products_have_an_empty_order():
    assert scale(names=()).order(np.empty((0, 2)), WEIGHTS).tolist() == []


def test_knots_too_far_from_zero_for_folding_are_read_plainly():
    far = Curve((1e9, 1e9 + 4.0), (0.0, 1.0))
    figures = np.array([[1e9 + 1.0], [1e9 + 1.0], [1e9 + 2.5]])
    assert scale(far).order(figures, np.array([1.0]), [False, False, True]).tolist() == [1, 0, 2]


def test_what_does_not_fit_is_refused():
    with pytest.raises(ValueError, match=r"figures of shape \(2, 2\); \(3, 2\) is needed"):
        scale().order(np.zeros((2, 2)), WEIGHTS)
    for take in (scale().order, scale().scores):
        with pytest.raises(ValueError, match=r"weights have shape \(3,\); \(2,\) is needed"):
            take(np.zeros((3, 2)), np.ones(3))
        with pytest.raises(ValueError, match="each is a number, 0 or more"):
            take(np.zeros((3, 2)), np.array([1.0, -2.0]))
        with pytest.raises(ValueError, match="each is a number, 0 or more"):
            take(np.zeros((3, 2)), np.array([1.0, np.nan]))
        with pytest.raises(ValueError, match="the weights add up to 0"):
            take(np.zeros((3, 2)), np.zeros(2))
        with pytest.raises(ValueError, match="the weights add up to inf"):
            take(np.zeros((3, 2)), np.array([1.0, np.inf]))
    with pytest.raises(ValueError, match="held-back flags"):
        scale().order(np.zeros((3, 2)), WEIGHTS, [True])


@pytest.mark.parametrize("size", [1e-310, 1e-9, 1.0, 1e9, 1e299])
def test_only_the_ratios_of_weights_count(size):
    figures = np.array([[800.0 - 1e-10, 250.0], [800.0, 250.0], [800.0 + 1e-6, 250.0]])
    assert scale().order(figures, WEIGHTS * size).tolist() == [1, 0, 2]
    assert scale(PRICE, PRICE).order(figures * 1.0, WEIGHTS * size).tolist() == [1, 0, 2]


def test_knots_so_far_from_zero_that_folding_would_turn_the_order_round():
    """Here a score as one factor times a figure is off in the fifth digit; read off the curve it is not."""
    far, near = Curve((1e12, 1e12 + 3.0), (0.0, 1.0)), Curve((0.0, 3.0), (0.0, 1.0))
    rng = np.random.default_rng(7)
    names = tuple(f"p{i:04}" for i in range(5000))
    figures = np.column_stack((1e12 + rng.uniform(0, 3, 5000), rng.uniform(0, 3, 5000)))
    ready, weights = FixedScale(names, (far, near)), np.array([2.0, 3.0])
    by_hand = np.lexsort((np.arange(5000), -ready.scores(figures, weights)))
    assert ready.order(figures, weights).tolist() == by_hand.tolist()
    folded = (figures / 3.0) @ (weights / 5.0)
    assert np.argsort(-folded, kind="stable").tolist() != by_hand.tolist()


@pytest.mark.parametrize("bases", [(1e12, 7e11), (3e11, 1e12, 2e12), (1e10, 3e10, 2e10)])
def test_several_figures_far_from_zero_are_ordered_as_read_off_their_curves(bases):
    """One such figure keeps the order when folded; two that are rounded each in its own way do not."""
    curves = [Curve((base, base + 3.0), (0.0, 1.0)) for base in bases]
    rng, count = np.random.default_rng(7), 5000
    names = tuple(f"p{i:04}" for i in range(count))
    figures = np.column_stack([base + rng.uniform(0, 3, count) for base in bases])
    weights = np.array([2.0, 3.0, 1.7][: len(bases)])
    ready = FixedScale(names, curves)
    by_hand = np.lexsort((np.arange(count), -ready.scores(figures, weights)))
    assert ready.order(figures, weights).tolist() == by_hand.tolist()


def test_a_single_product_has_one_place_and_its_nan_is_refused():
    alone = scale(names=("heron",))
    assert alone.order(np.array([[700.0, 300.0]]), WEIGHTS).tolist() == [0]
    with pytest.raises(ValueError, match="asked for NaN"):
        alone.order(np.array([[700.0, np.nan]]), WEIGHTS)


def test_the_message_says_what_shape_is_needed():
    with pytest.raises(ValueError, match=r"needed, one row a product and one column a criterion$"):
        scale().order(np.zeros((2, 2)), WEIGHTS)
