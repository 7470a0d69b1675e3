import numpy as np
import pytest

from spindlewise.decide.smallest_change import nearest_shares, smallest_change
from spindlewise.decide.table import MeritTable


def table(merits, products=("heron", "siskin", "wigeon", "avocet")):
    array = np.array(merits, dtype=float)
    return MeritTable(products[: len(array)], tuple("xyz"[: array.shape[1]]), array, array, array)


def test_two_criteria_by_hand():
    change = smallest_change(table([[1, 0], [0, 1], [0.6, 0.6]]), np.array([7.0, 3.0]))
    assert (change.first, change.product) == ("heron", "wigeon")
    assert change.shares == pytest.approx([0.6, 0.4])
    assert change.distance == pytest.approx(0.1 * np.sqrt(2))


def test_where_a_share_comes_to_0_the_rest_goes_on():
    # the rival gains 0.1 on z only and loses 1 on x, 0.1 on y: x is given up first, then y pays for z
    nearest = nearest_shares(np.array([0.1, 0.8, 0.1]), np.array([-1.0, -0.1, 0.1]))
    assert nearest == pytest.approx([0.0, 0.5, 0.5])


def test_a_criterion_without_weight_may_be_given_some():
    nearest = nearest_shares(np.array([1.0, 0.0]), np.array([-0.5, 0.5]))
    assert nearest == pytest.approx([0.5, 0.5])
    # of two without weight only the one on which the rival gains takes any
    assert nearest_shares(np.array([1.0, 0.0, 0.0]), np.array([-0.5, 0.5, -0.6]))[2] == 0.0


def test_shares_that_will_do_already_are_kept():
    each = np.array([0.3, 0.7])
    assert nearest_shares(each, np.array([1.0, -0.1])).tolist() == each.tolist()
    with pytest.raises(
        ValueError, match=r"^the gains \[-1.0, -0.1\] are all below 0; no shares make up for that$"
    ):
        nearest_shares(each, np.array([-1.0, -0.1]))


def test_a_leader_that_dominates_all_others_cannot_be_passed():
    assert smallest_change(table([[1, 0.5], [0.9, 0.5], [0.8, 0.4]]), np.array([0.5, 0.5])) is None
    assert smallest_change(table([[1, 0.5], [1, 0.5]]), np.array([0.5, 0.5])) is None
    assert smallest_change(table([[1, 0.5]]), np.array([0.5, 0.5])) is None


def test_drawing_level_is_enough_for_a_rival_that_equal_scores_favour():
    # avocet is no better on any criterion, but level on y, and equal scores go by id
    change = smallest_change(table([[1, 0.5], [0.9, 0.5]], ("heron", "avocet")), np.array([0.5, 0.5]))
    assert change.product == "avocet"
    assert change.shares == pytest.approx([0.0, 1.0])


def test_products_held_back_take_no_first_place_unless_all_are():
    merits, weights = [[1, 0], [0, 1], [0.6, 0.6]], np.array([0.7, 0.3])
    assert smallest_change(table(merits), weights, [False, False, True]).product == "siskin"
    assert smallest_change(table(merits), weights, [True, True, True]).product == "wigeon"
    assert smallest_change(table(merits), weights, [False, True, True]) is None


def test_a_present_tie_needs_no_change():
    change = smallest_change(table([[1, 0], [0, 1]]), np.array([0.5, 0.5]))
    assert (change.product, change.distance) == ("siskin", 0.0)


def test_of_two_rivals_equally_near_the_smaller_id_is_named():
    merits = [[0.6, 0.6], [1, 0], [0, 1]]
    assert smallest_change(table(merits, ("m", "z", "a")), np.array([0.5, 0.5])).product == "a"
    assert smallest_change(table(merits, ("m", "a", "z")), np.array([0.5, 0.5])).product == "a"


def test_a_rival_whose_way_is_longer_than_it_looks_does_not_win():
    # without the bound at 0 siskin lies 0.48 away, nearer than wigeon is (0.55); with it 0.67
    change = smallest_change(table([[0.5, 1, 0.2], [0, 0, 0.3], [0.2, 0.4, 0.3]]), np.array([9.0, 2.0, 5.0]))
    assert change.product == "wigeon"
    assert change.distance == pytest.approx(0.5519850541)


def test_a_rival_alike_in_all_criteria_but_behind_does_not_divide_by_zero():
    change = smallest_change(table([[0.8, 0.8], [0.7, 0.7], [0.0, 1.0]]), np.array([0.9, 0.1]))
    assert change.product == "wigeon"


def test_no_products_no_first_place():
    with pytest.raises(
        ValueError, match=r"^a table without products has no first place; at least one product is needed$"
    ):
        smallest_change(table(np.empty((0, 2))), np.array([0.5, 0.5]))


def test_the_rival_that_looks_nearest_may_not_be_the_one():
    # without the bound at 0 siskin lies 0.37 away and wigeon 0.44; with it siskin 0.51
    change = smallest_change(
        table([[0.9, 0.5, 1.0], [0.7, 0.6, 0.2], [0.2, 0.8, 1.0]]), np.array([9.0, 4.0, 3.0])
    )
    assert change.product == "wigeon"
    assert change.distance == pytest.approx(0.4392201717)


def test_rivals_equally_near_go_by_id_whatever_they_lack_on_the_way():
    # both draw level with siskin only where warranty has all the weight; heron seems nearer, lacking less
    names, criteria = ("siskin", "heron", "avocet"), ("price", "weight", "warranty")
    merits = np.array([[1.0, 1.0, 0.5], [0.0, 0.5, 0.5], [0.0, 0.0, 0.5]])
    for rows in ([0, 1, 2], [2, 1, 0]):
        question = MeritTable(tuple(names[row] for row in rows), criteria, *(merits[rows],) * 3)
        change = smallest_change(question, np.ones(3))
        assert change.product == "avocet"
        assert change.shares == pytest.approx([0.0, 0.0, 1.0])


def test_a_rival_ahead_by_less_than_scores_are_settled_to_is_level_now():
    change = smallest_change(table([[0.5, 0.5], [0.5 + 5e-12, 0.5 + 5e-12]]), np.array([1.0, 1.0]))
    assert (change.first, change.product, change.distance) == ("heron", "siskin", 0.0)


def test_a_rival_far_behind_may_be_nearer_than_one_close_behind():
    # siskin lacks 60 points but gains all on two criteria; wigeon lacks 14 and gains a fifth on one
    change = smallest_change(table([[0, 0, 1], [1, 1, 0], [0, 0.2, 0.8]]), np.array([1.0, 1.0, 8.0]))
    assert change.product == "siskin"
    # along (1, 1, -1) less its mean: 0.6 over the root of 8/3
    assert change.distance == pytest.approx(0.6 / np.sqrt(8 / 3))
