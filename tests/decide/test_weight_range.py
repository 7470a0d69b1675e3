import numpy as np
import pytest

from spindlewise.decide.table import MeritTable
from spindlewise.decide.weight_range import WeightRange, weight_ranges


def table(merits, products=("heron", "siskin", "wigeon")):
    array = np.array(merits, dtype=float)
    criteria = ("price", "weight", "stack")[: array.shape[1]]
    return MeritTable(products[: len(array)], criteria, array, array, array)


def test_two_criteria_by_hand():
    # heron leads wigeon (0.6, 0.6) while 1 * t > 0.6, and loses to nobody above
    price, weight = weight_ranges(table([[1, 0], [0, 1], [0.6, 0.6]]), np.array([0.7, 0.3]))
    assert (price.low, price.high) == pytest.approx((0.6, 1.0))
    assert (price.low_rival, price.high_rival) == ("wigeon", None)
    assert (weight.low, weight.high) == pytest.approx((0.0, 0.4))
    assert (weight.low_rival, weight.high_rival) == (None, "wigeon")


def test_the_middle_product_has_a_range_with_two_ends():
    price, _ = weight_ranges(table([[1, 0], [0, 1], [0.6, 0.6]]), np.array([0.5, 0.5]))
    assert (price.low, price.high) == pytest.approx((0.4, 0.6))
    assert (price.low_rival, price.high_rival) == ("siskin", "heron")


def test_a_criterion_without_weight_may_be_given_some():
    found = weight_ranges(table([[1, 0.5, 0.0], [0.5, 0.5, 1.0]]), np.array([1.0, 1.0, 0.0]))[2]
    # lead on the others (0.5 + 0) / 2 = 0.25, on stack -1: level where 0.25 (1 - t) = t
    assert found == WeightRange("stack", 0.0, 0.0, pytest.approx(0.2), None, "siskin")


def test_where_a_criterion_has_all_the_weight_the_others_share_what_is_left_equally():
    found = weight_ranges(table([[1, 0, 0.5], [0.5, 1, 0.5]]), np.array([1.0, 0.0, 0.0]))[0]
    # lead 0.5 on price, mean of -1 and 0 on the others: level where 0.5 t = 0.5 (1 - t)
    assert found == WeightRange("price", 1.0, pytest.approx(0.5), 1.0, "siskin", None)


def test_a_single_criterion_has_all_the_weight_whatever_it_is():
    assert weight_ranges(table([[1], [0.5]]), np.array([3.0])) == (
        WeightRange("price", 1.0, 1.0, 1.0, None, None),
    )


def test_a_present_tie_leaves_no_room_on_one_side():
    price, _ = weight_ranges(table([[1, 0], [0, 1]]), np.array([0.5, 0.5]))
    assert (price.low, price.high, price.low_rival) == (0.5, 1.0, "siskin")


def test_a_twin_and_a_dominated_rival_limit_nothing_and_rivals_held_back_neither():
    for found in weight_ranges(table([[1, 0.5], [1, 0.5], [0.9, 0.5]]), np.array([0.5, 0.5])):
        assert (found.low, found.high, found.low_rival, found.high_rival) == (0.0, 1.0, None, None)
    for found in weight_ranges(table([[1, 0], [0, 1]]), np.array([0.7, 0.3]), [False, True]):
        assert (found.low, found.high) == (0.0, 1.0)


def test_when_all_are_held_back_they_are_compared_among_themselves():
    assert weight_ranges(table([[1, 0], [0, 1]]), np.array([0.7, 0.3]), [True, True])[0].low_rival == "siskin"


def test_of_two_rivals_at_the_same_end_the_smaller_id_is_named():
    found = weight_ranges(
        table([[0, 1], [1, 0], [0, 1]], ("wigeon", "heron", "avocet")), np.array([0.7, 0.3])
    )
    assert found[0].low_rival == "avocet"


def test_no_products_no_range():
    with pytest.raises(
        ValueError, match=r"^a table without products has no first place; at least one product is needed$"
    ):
        weight_ranges(table(np.empty((0, 2))), np.array([0.5, 0.5]))


def test_a_difference_in_the_last_bit_limits_nothing():
    found = weight_ranges(table([[0.3, 0.6], [0.1 + 0.2, 0.5]]), np.array([0.5, 0.5]))
    assert [(each.low, each.high, each.high_rival) for each in found] == [(0.0, 1.0, None)] * 2


def test_the_present_share_lies_in_its_own_range_to_the_last_bit():
    # level at exactly 2/7, where 0.2 / 0.7 is one last digit more than the present share
    price, _ = weight_ranges(table([[0.5, 0.0], [0.0, 0.2]]), np.array([2.0, 5.0]))
    assert price.low == price.share < 0.2 / 0.7


def test_the_range_is_that_of_the_best_product_not_held_back():
    price, _ = weight_ranges(
        table([[1, 1], [1, 0], [0, 1]]), np.array([0.7, 0.3]), held_back=[True, False, False]
    )
    assert (price.low, price.low_rival) == (0.5, "wigeon")


def test_the_other_criteria_keep_their_ratios():
    price = weight_ranges(table([[0, 1, 0], [1, 0, 0]]), np.array([1.0, 3.0, 1.0]))[0]
    # lead 3/4 on the others together, -1 on price: level where 3/4 (1 - t) = t
    assert (price.low, price.high) == (0.0, pytest.approx(3 / 7))


def test_the_nearest_of_several_ends_counts_on_the_way_up_too():
    price, weight = weight_ranges(table([[0, 1], [1, 0.4], [0.5, 0.5]]), np.array([0.2, 0.8]))
    # siskin is level where 0.6 (1 - t) = t, wigeon only at a half
    assert (price.high, price.high_rival) == (pytest.approx(0.375), "siskin")
    assert (weight.low, weight.low_rival) == (pytest.approx(0.625), "siskin")
    price, _ = weight_ranges(table([[0, 1], [1, 0]]), np.array([0.2, 0.8]))
    assert (price.high, price.high_rival) == (0.5, "siskin")


def test_of_two_rivals_at_the_same_upper_end_the_smaller_id_is_named():
    names = ("wigeon", "heron", "avocet")
    price, _ = weight_ranges(table([[1, 0], [0, 1], [1, 0]], names), np.array([0.2, 0.8]))
    assert price.high_rival == "avocet"


def test_a_tie_but_for_the_last_bit_is_lost_with_the_first_gram_of_weight_elsewhere():
    # heron is first by its id alone; siskin is better on weight, which counts nothing yet
    _, weight = weight_ranges(table([[0.3, 0.0], [0.1 + 0.2, 1.0]]), np.array([1.0, 0.0]))
    assert (weight.low, weight.high, weight.high_rival) == (0.0, 0.0, "siskin")
