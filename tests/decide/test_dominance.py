import numpy as np
import pytest

from spindlewise.decide.dominance import dominated_pairs, dominates, undominated


def test_equal_rows_do_not_dominate_each_other():
    merits = np.array([[0.5, 0.5], [0.5, 0.5], [0.5, 0.4]])
    assert not dominates(merits[0], merits[1])
    assert dominated_pairs(merits).tolist() == [[0, 2], [1, 2]]
    assert undominated(merits).tolist() == [True, True, False]


def test_better_on_one_and_worse_on_another_is_not_dominance():
    merits = np.array([[0.5, 0.6], [0.6, 0.5]])
    assert not dominates(merits[0], merits[1])
    assert dominated_pairs(merits).shape == (0, 2)
    assert undominated(merits).all()


def test_no_products_no_pairs():
    assert dominated_pairs(np.empty((0, 3))).shape == (0, 2)
    assert undominated(np.empty((0, 3))).tolist() == []
    # rows can be taken by these pairs, none of them too
    assert dominated_pairs(np.empty((0, 3))).dtype == np.intp


@pytest.mark.parametrize("filtered", [dominated_pairs, undominated])
def test_bad_merits_are_refused(filtered):
    with pytest.raises(ValueError, match=r"^a merit is NaN; every merit is a number$"):
        filtered(np.array([[0.5, float("nan")]]))
    with pytest.raises(
        ValueError,
        match=r"^merits have shape \(2,\); \(products, criteria\) with at least one criterion needed$",
    ):
        filtered(np.array([0.5, 0.5]))
    with pytest.raises(ValueError, match="at least one criterion"):
        filtered(np.empty((2, 0)))


@pytest.mark.parametrize("column", [0, 1])
def test_a_lead_too_small_for_the_sum_of_merits_to_show_still_dominates(column):
    # 1 + 1e-17 is 1 in floats, so all sums are equal; more rows than are settled at a time
    merits = np.zeros((201, 2))
    merits[:, 1 - column] = 1.0
    merits[-1, column] = 1e-17
    assert undominated(merits).tolist() == [False] * 200 + [True]


def test_of_many_twins_all_stay_and_what_is_worse_goes():
    merits = np.array([[0.5, 0.5]] * 200 + [[0.5, 0.4], [0.6, 0.3]])
    assert undominated(merits).tolist() == [True] * 200 + [False, True]
