import numpy as np
import pytest

from spindlewise.decide.table import MeritTable

NAMES, CRITERIA = ("heron", "siskin"), ("price", "weight")


def table(low, expected, high):
    return MeritTable(NAMES, CRITERIA, *(np.array(m, dtype=float) for m in (low, expected, high)))


def test_the_arrays_cannot_be_written_and_the_callers_still_can():
    merits = np.full((2, 2), 0.5)
    held = MeritTable(NAMES, CRITERIA, merits, merits, merits)
    with pytest.raises(ValueError, match="read-only"):
        held.expected[0, 0] = 1.0
    merits[0, 0] = 0.25
    assert merits.flags.writeable


def test_one_array_given_three_times_is_certain_and_three_arrays_are_not():
    merits = np.full((2, 2), 0.5)
    assert MeritTable(NAMES, CRITERIA, merits, merits, merits).is_certain
    assert not MeritTable(NAMES, CRITERIA, merits, merits, merits.copy()).is_certain
    assert not MeritTable(NAMES, CRITERIA, merits.copy(), merits, merits).is_certain


def test_low_and_high_are_widened_by_rounding_but_not_by_more():
    near = table([[0.5 + 1e-12, 0.1]] * 2, [[0.5, 0.5]] * 2, [[0.5 - 1e-12, 0.9]] * 2)
    assert near.low.tolist() == [[0.5, 0.1]] * 2
    assert near.high.tolist() == [[0.5, 0.9]] * 2
    with pytest.raises(
        ValueError,
        match=r"^the low merit in row 1, column 0 stands above the expected merit;",
    ):
        table([[0.1, 0.1], [0.6, 0.1]], [[0.5, 0.5]] * 2, [[0.5, 0.9]] * 2)
    with pytest.raises(
        ValueError,
        match=r"^the expected merit in row 0, column 1 stands above the high merit; low <= expected <= high",
    ):
        table([[0.1, 0.1]] * 2, [[0.5, 0.5]] * 2, [[0.5, 0.4], [0.5, 0.9]])


def test_out_of_order_by_as_much_as_rounding_may_is_widened_still():
    found = table([[1e-9, 0.0]] * 2, [[0.0, 0.0]] * 2, [[0.0, 0.0]] * 2)
    assert found.low.tolist() == [[0.0, 0.0]] * 2


def test_whole_merits_are_kept_as_floats():
    none_or_all = np.array([[0, 1], [1, 0]])
    found = MeritTable(NAMES, CRITERIA, none_or_all, none_or_all, none_or_all)
    assert (found.expected.dtype, found.is_certain) == (np.float64, True)


@pytest.mark.parametrize("bad", [-0.1, 1.1, float("nan"), float("inf")])
def test_merits_outside_0_to_1_are_refused(bad):
    good = [[0.0, 0.0], [0.0, 0.0]]
    with pytest.raises(ValueError, match=r"^expected merits run from \S+ to \S+; each lies in 0 to 1$"):
        table(good, [[0.5, bad], [0.5, 0.5]], [[1, 1], [1, 1]])
    with pytest.raises(ValueError, match="low merits run from"):
        table([[0.5, bad], [0.5, 0.5]], [[1, 1], [1, 1]], [[1, 1], [1, 1]])
    with pytest.raises(ValueError, match=r"^high merits run from"):
        table(good, good, [[0.5, bad], [0.5, 0.5]])
    assert table(good, good, good).expected.tolist() == good


def test_shapes_and_repeated_names_are_refused():
    with pytest.raises(
        ValueError, match=r"^expected merits have shape \(2, 1\); \(2, 2\) \(products, criteria\) is needed$"
    ):
        table([[0.5, 0.5]] * 2, [[0.5]] * 2, [[0.5, 0.5]] * 2)
    merits = np.full((2, 2), 0.5)
    with pytest.raises(
        ValueError, match=r"^each product stands once in a merit table; more than once: heron, siskin$"
    ):
        MeritTable(("siskin", "heron", "heron", "siskin"), CRITERIA, merits, merits, merits)
    with pytest.raises(ValueError, match=r"each criterion stands once.*price"):
        MeritTable(NAMES, ("price", "price"), merits, merits, merits)


def test_a_table_may_hold_no_product():
    none = np.empty((0, 2))
    assert MeritTable((), CRITERIA, none, none, none).expected.shape == (0, 2)


def test_keep_takes_the_products_named_in_the_order_named():
    whole = table([[0.1, 0.2], [0.3, 0.4]], [[0.2, 0.3], [0.4, 0.5]], [[0.3, 0.4], [0.5, 0.6]])
    kept = whole.keep(["siskin", "heron"])
    assert kept.products == ("siskin", "heron")
    assert (kept.low[0, 0], kept.expected[0, 0], kept.high[0, 0]) == (0.3, 0.4, 0.5)
    merits = np.full((2, 2), 0.5)
    assert MeritTable(NAMES, CRITERIA, merits, merits, merits).keep(["heron"]).is_certain
    assert whole.keep([]).expected.shape == (0, 2)
    with pytest.raises(ValueError, match=r"^the table has no product wigeon, avocet; it has heron, siskin$"):
        whole.keep(["wigeon", "heron", "avocet"])


def test_keep_refuses_a_product_named_twice():
    whole = table([[0.1, 0.2], [0.3, 0.4]], [[0.2, 0.3], [0.4, 0.5]], [[0.3, 0.4], [0.5, 0.6]])
    with pytest.raises(
        ValueError, match=r"^each product stands once in a merit table; more than once: heron$"
    ):
        whole.keep(["heron", "siskin", "heron"])


def test_rows_of_a_checked_table_are_a_table_of_their_own_that_nobody_can_write_to():
    whole = table([[0.1, 0.2], [0.3, 0.4]], [[0.2, 0.3], [0.4, 0.5]], [[0.3, 0.4], [0.5, 0.6]])
    part = whole.at_rows(np.array([1]))
    assert part.products == ("siskin",)
    again = MeritTable(part.products, part.criteria, part.low, part.expected, part.high)
    for name in ("low", "expected", "high"):
        assert np.array_equal(getattr(part, name), getattr(again, name))
        assert not getattr(part, name).flags.writeable
        assert getattr(part, name).flags.c_contiguous
