import numpy as np
import pytest
import scipy.optimize

from spindlewise.decide.potentially_first import potentially_first
from spindlewise.decide.table import MeritTable


def table(merits, products=("heron", "siskin", "wigeon")):
    array = np.array(merits, dtype=float)
    return MeritTable(products[: len(array)], tuple("xyz"[: array.shape[1]]), array, array, array)


@pytest.mark.parametrize(("middle", "margin"), [(0.6, 10.0), (0.5, 0.0), (0.4, -10.0)])
def test_a_middling_product_is_first_for_some_weights_only_above_the_line_between_the_others(middle, margin):
    found = potentially_first(table([[1, 0], [0, 1], [middle, middle]]), 2)
    assert found.margin == pytest.approx(margin, abs=1e-6)
    assert found.can_be_first == (margin >= 0)
    assert found.shares == pytest.approx([0.5, 0.5])


def test_undominated_is_not_enough_to_be_first():
    # wigeon is dominated by neither, yet no weights put it first
    found = potentially_first(table([[1, 0], [0, 1], [0.45, 0.45]]), 2)
    assert not found.can_be_first


def test_the_best_case_of_an_extreme_product_is_its_own_criterion():
    found = potentially_first(table([[1, 0], [0, 1], [0.6, 0.6]]), 0)
    assert found.margin == pytest.approx(40.0)
    assert found.shares == pytest.approx([1.0, 0.0])


def test_what_is_worst_in_everything_falls_short_by_the_whole_scale():
    found = potentially_first(table([[0, 0], [1, 1], [0.5, 0.5]]), 0)
    assert (found.can_be_first, found.margin) == (False, pytest.approx(-100.0))
    assert found.shares.sum() == pytest.approx(1.0)


def test_a_twin_draws_level_at_best():
    found = potentially_first(table([[1, 0], [1, 0]]), 0)
    assert (found.can_be_first, found.margin) == (True, 0.0)


def test_products_held_back_are_no_rivals_and_cannot_be_first():
    merits = [[1, 1], [0, 0.5]]
    assert potentially_first(table(merits), 1).can_be_first is False
    freed = potentially_first(table(merits), 1, [True, False])
    assert (freed.can_be_first, freed.margin, freed.shares.tolist()) == (True, None, [0.5, 0.5])
    held = potentially_first(table(merits), 0, [True, False])
    assert (held.product, held.can_be_first, held.margin, held.shares) == ("heron", False, None, None)
    assert potentially_first(table(merits), 0, [True, True]).can_be_first


def test_a_solver_that_fails_is_reported(monkeypatch):
    failure = scipy.optimize.OptimizeResult(x=None, message="out of time")
    monkeypatch.setattr(scipy.optimize, "linprog", lambda *args, **kwargs: failure)
    with pytest.raises(RuntimeError, match="out of time"):
        potentially_first(table([[1, 0], [0, 1]]), 0)
