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
