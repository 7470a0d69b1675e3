"""How alike two rows of figures are."""

import numpy as np
import pytest

from spindlewise.decide.rank_agreement import kendall_tau_b, pearson, spearman


def test_the_same_order_is_one_and_the_opposite_minus_one() -> None:
    for alike in (kendall_tau_b, pearson, spearman):
        assert alike([1, 2, 3, 4], [1, 2, 3, 4]) == pytest.approx(1.0)
        assert alike([1, 2, 3, 4], [4, 3, 2, 1]) == pytest.approx(-1.0)


@pytest.mark.parametrize("alike", [kendall_tau_b, pearson, spearman])
def test_where_all_of_one_tie_nothing_can_be_said(alike) -> None:
    assert alike([1, 2, 3], [5, 5, 5]) is None
    assert alike([5, 5, 5], [1, 2, 3]) is None
    assert alike([1], [1]) is None
    assert alike([], []) is None


def test_correlation_does_not_depend_on_the_size_of_the_figures() -> None:
    tiny, huge = [1e-200, 2e-200, 4e-200], [1e200, 3e200, 2e200]

    assert pearson(tiny, huge) == pytest.approx(pearson([1, 2, 4], [1, 3, 2]))


@pytest.mark.parametrize("alike", [kendall_tau_b, pearson, spearman])
@pytest.mark.parametrize(("x", "y"), [([1, 2], [1, 2, 3]), ([[1, 2]], [[1, 2]])])
def test_rows_that_do_not_fit_are_refused(alike, x, y) -> None:
    with pytest.raises(ValueError, match="two of one length"):
        alike(x, y)


def test_two_pairs_lie_on_one_line() -> None:
    for alike in (kendall_tau_b, pearson, spearman):
        assert alike([1, 2], [30, 40]) == pytest.approx(1.0)
        assert alike([1, 2], [40, 30]) == pytest.approx(-1.0)


def test_rounding_leads_no_correlation_beyond_one() -> None:
    rng = np.random.default_rng(1)
    for _ in range(300):
        row = rng.normal(size=7)
        assert pearson(row, 3.7 * row + 0.1) <= 1.0
        assert pearson(row, -3.7 * row + 0.1) >= -1.0
