import numpy as np
import pytest

from spindlewise.decide.score import held_flags, ranking_order, score, settled, shares
from spindlewise.decide.table import MeritTable

MERITS = np.array([[1.0, 0.5], [0.2, 0.6]])
TABLE = MeritTable(("heron", "siskin"), ("price", "weight"), MERITS / 2, MERITS, np.minimum(1, MERITS * 1.5))


def test_shares_stand_in_the_order_of_the_criteria():
    assert shares({"price": 40, "weight": 20}, ["weight", "price"]).tolist() == [1 / 3, 2 / 3]
    assert shares({"price": 5e-324}, ["price", "weight"]).tolist() == [1.0, 0.0]


@pytest.mark.parametrize(
    ("weights", "message"),
    [
        ({"price": -1.0}, "price -1.0; each is a finite number"),
        ({"price": float("nan")}, "price nan"),
        ({"price": float("inf")}, "price inf"),
        ({"price": 0.0}, "add up to 0.0"),
        ({}, r"^the weights add up to 0(\.0)?; at least one is above 0, and all are below 1e300$"),
        ({"price": 1e300}, "below 1e300"),
        ({"colour": 1.0, "price": 1.0}, "weights given for colour; the criteria are price, weight"),
        ({"logo": 1.0, "colour": 1.0}, r"^weights given for colour, logo; the criteria are price, weight$"),
        (
            {"weight": -2.0, "price": float("nan")},
            r"^weights that cannot be: weight -2.0, price nan; each is a finite number, 0 or more$",
        ),
    ],
)
def test_weights_that_cannot_be_are_refused(weights, message):
    with pytest.raises(ValueError, match=message):
        shares(weights, ["price", "weight"])


def test_the_score_is_100_times_the_weighted_mean_of_merits():
    scores = score(TABLE, np.array([3.0, 1.0]))
    assert scores.expected.tolist() == [87.5, 30.0]
    assert scores.low.tolist() == [43.75, 15.0]
    assert scores.high.tolist() == [93.75, 45.0]


def test_a_certain_table_is_scored_once():
    scores = score(MeritTable(TABLE.products, TABLE.criteria, MERITS, MERITS, MERITS), np.array([1.0, 1.0]))
    assert scores.low is scores.expected is scores.high


@pytest.mark.parametrize(
    "weights", [[1.0], [1.0, -1.0], [1.0, float("nan")], [0.0, 0.0], [float("inf"), 1.0]]
)
def test_weights_that_do_not_fit_the_table_are_refused(weights):
    with pytest.raises(ValueError, match="weights"):
        score(TABLE, np.array(weights))


def test_what_is_equal_on_paper_is_level_here():
    # 0.1 + 0.2 and 0.3 differ in the last bit; as contributions to a score they do not
    merits = np.array([[0.1, 0.2, 0.0], [0.0, 0.0, 0.3]])
    scores = score(MeritTable(("b", "a"), ("x", "y", "z"), merits, merits, merits), np.ones(3)).expected
    assert scores[0] == scores[1] == 10.0
    assert ranking_order(("b", "a"), scores).tolist() == [1, 0]
    assert settled(0.1 + 0.2) == 0.3


def test_ties_of_several_go_by_id_and_leave_the_others_where_they_are():
    products = ("e", "d", "c", "b", "a", "f")
    scores = np.array([50.0, 70.0, 50.0, 70.0, 60.0, 50.0])
    assert [products[row] for row in ranking_order(products, scores)] == ["b", "d", "a", "c", "e", "f"]


def test_products_held_back_stand_after_all_others_in_the_same_order():
    products, scores = ("d", "c", "b", "a"), np.array([90.0, 20.0, 80.0, 80.0])
    held = [True, False, True, True]
    assert [products[row] for row in ranking_order(products, scores, held)] == ["c", "d", "a", "b"]


def test_the_order_agrees_with_a_plain_sort():
    rng = np.random.default_rng(5)
    scores = rng.integers(0, 60, 400).astype(float)
    products = tuple(f"p{i:03}" for i in rng.permutation(400))
    held = rng.random(400) < 0.1
    plain = sorted(range(400), key=lambda row: (held[row], -scores[row], products[row]))
    assert ranking_order(products, scores, held).tolist() == plain


def test_what_cannot_be_ordered_is_refused():
    with pytest.raises(ValueError, match=r"^2 products and scores of shape \(1,\); one score a product$"):
        ranking_order(("a", "b"), np.array([1.0]))
    with pytest.raises(
        ValueError, match=r"^a score is NaN; every product needs a score before it can be placed$"
    ):
        ranking_order(("a", "b"), np.array([1.0, float("nan")]))
    with pytest.raises(ValueError, match="one a product"):
        ranking_order(("a", "b"), np.array([1.0, 2.0]), [True])
    assert ranking_order((), np.array([])).tolist() == []
    assert held_flags(None, 2).tolist() == [False, False]
    assert held_flags(None, 2).dtype == np.bool_


def test_the_order_of_the_criteria_does_not_show_in_the_last_bit_of_a_share():
    weights = {"a": 0.1, "b": 0.2, "c": 0.3}
    there, back = shares(weights, list("abc")), shares(weights, list("cba"))
    assert 0.1 + 0.2 + 0.3 != 0.3 + 0.2 + 0.1
    assert there.tolist() == back[::-1].tolist()


def test_where_nothing_is_scored_the_weights_add_up_to_nothing():
    with pytest.raises(ValueError, match=r"^the weights add up to 0; at least one is above 0"):
        shares({}, [])
