"""What other methods say beside our ranking, and why they differ."""

import numpy as np
import pytest

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.second_opinions import second_opinions
from spindlewise.decide.table import MeritTable

CURVES = (Curve((400.0, 1200.0), (1.0, 0.0)), Curve((200.0, 500.0), (1.0, 0.0)))
DIRECTIONS = ("less", "less")


def table_and_figures(figures, names=("avocet", "dunlin", "heron", "siskin"), curves=CURVES):
    values = np.array(figures, dtype=float)
    merits = merits_at(curves, values)
    criteria = ("price", "weight", "stack")[: len(curves)]
    return MeritTable(tuple(names[: len(values)]), criteria, merits, merits, merits), values


def opinions(figures, shares=(0.5, 0.5), held_back=None, **kwargs):
    table, values = table_and_figures(figures, **kwargs)
    directions = ("less",) * len(table.criteria)
    return second_opinions(table, np.array(shares), values, directions, held_back)


def test_where_one_product_is_best_in_all_every_method_agrees() -> None:
    for opinion in opinions([[500, 250], [700, 300], [900, 350]]):
        assert opinion.first == "avocet"
        assert opinion.tau_b == pytest.approx(1.0)
        assert opinion.reason is None


def test_methods_are_named_and_their_values_given() -> None:
    topsis, min_max = opinions([[500, 250], [700, 300]])

    assert (topsis.method, min_max.method) == ("TOPSIS", "min-max weighted sum")
    assert min_max.values.tolist() == [1.0, 0.0]
    assert topsis.values.tolist() == [1.0, 0.0]


def test_a_narrow_range_gives_a_criterion_more_weight_than_the_buyer_did() -> None:
    """Prices within 20 of each other count for min-max as much as weights 100 g apart."""
    # ours: the avocet leads by weight; the dunlin is 20 cheaper and 40 g heavier
    _, min_max = opinions([[600, 300], [580, 340], [600, 400]])

    assert min_max.first == "dunlin"
    assert min_max.reason is not None
    (stretch,) = min_max.reason.stretched
    # a unit of merit in price is 800, in weight 300; min-max divides by 20 and 100
    assert stretch.criterion == "price"
    assert stretch.share == 0.5
    assert stretch.effective_share == pytest.approx((800 / 20) / (800 / 20 + 300 / 100))
    assert stretch.ratio == pytest.approx(2 * stretch.effective_share)


def test_the_product_whose_removal_ends_the_disagreement_is_named() -> None:
    """Without the heron the weights span 40 g only and both count alike; the id then decides."""
    _, min_max = opinions([[600, 300], [580, 340], [600, 400]])

    assert min_max.reason is not None
    assert min_max.reason.reversed_by == ("heron",)


def test_a_disagreement_that_hangs_on_no_single_product_names_none() -> None:
    _, min_max = opinions([[600, 300], [580, 340], [600, 400], [600, 400]])

    assert min_max.first == "dunlin"
    assert min_max.reason is not None
    assert min_max.reason.reversed_by == ()


def test_a_criterion_flat_on_our_curve_is_told_apart_by_the_method_only() -> None:
    """Below 400 a lower price has no more merit for us; min-max still counts it."""
    _, min_max = opinions([[390, 300], [300, 320], [350, 420]])

    assert min_max.first == "dunlin"
    assert min_max.reason is not None
    stretch = min_max.reason.stretched[0]
    assert (stretch.criterion, stretch.effective_share, stretch.ratio) == ("price", None, None)


def test_topsis_too_gives_its_reason() -> None:
    """Divided by their length, prices about 1,000 differ little; on our curve 400 is the whole range."""
    curves = (Curve((800.0, 1200.0), (1.0, 0.0)), CURVES[1])

    topsis, _ = opinions([[1000, 300], [900, 350], [1100, 500]], curves=curves)

    assert topsis.first == "avocet"
    assert topsis.reason is not None
    (stretch,) = topsis.reason.stretched
    assert stretch.criterion == "weight"
    lengths = np.sqrt([1000**2 + 900**2 + 1100**2, 300**2 + 350**2 + 500**2])
    per_merit = np.array([400.0, 300.0]) / lengths
    assert stretch.effective_share == pytest.approx(per_merit[1] / per_merit.sum())


def test_what_gets_no_weight_and_what_is_constant_is_no_reason() -> None:
    curves = (*CURVES, Curve((5.0, 20.0), (1.0, 0.0)))
    figures = [[600, 300, 12], [580, 340, 8], [600, 400, 12]]

    _, unweighed = opinions(figures, shares=(0.5, 0.5, 0.0), curves=curves)
    _, constant = opinions([[*row[:2], 9] for row in figures], shares=(0.4, 0.4, 0.2), curves=curves)

    for opinion in (unweighed, constant):
        assert opinion.reason is not None
        assert [stretch.criterion for stretch in opinion.reason.stretched] == ["price"]


def test_where_our_curves_tell_nobody_apart_the_reason_says_so() -> None:
    _, min_max = opinions([[390, 150], [300, 180], [350, 120]])

    assert min_max.tau_b is None
    assert min_max.first == "heron"
    assert min_max.reason is not None
    assert {stretch.criterion: stretch.ratio for stretch in min_max.reason.stretched} == {
        "price": None,
        "weight": None,
    }


def test_of_criteria_that_our_curves_do_not_tell_apart_the_weightiest_comes_first() -> None:
    _, min_max = opinions([[390, 150], [300, 180], [350, 120]], shares=(0.3, 0.7))

    assert min_max.reason is not None
    assert [(stretch.criterion, stretch.share) for stretch in min_max.reason.stretched] == [
        ("weight", 0.7),
        ("price", 0.3),
    ]


def test_the_criterion_that_gains_most_weight_comes_first_and_not_the_weightiest() -> None:
    """Min-max makes 45 % of the 40 for price, but 30 % of the 10 for stack."""
    curves = (*CURVES, Curve((5.0, 20.0), (1.0, 0.0)))
    figures = [[1000, 200, 15], [645, 350, 12.5], [1000, 500, 15]]

    _, min_max = opinions(figures, shares=(0.4, 0.5, 0.1), curves=curves)

    assert min_max.first == "dunlin"
    assert min_max.reason is not None
    assert [stretch.criterion for stretch in min_max.reason.stretched] == ["stack", "price"]
    assert [stretch.effective_share for stretch in min_max.reason.stretched] == pytest.approx(
        [0.3, 0.45], abs=0.005
    )


def test_on_what_both_firsts_are_alike_is_no_reason() -> None:
    """Stack counts for twice its weight, but the avocet and the dunlin are alike in it."""
    curves = (*CURVES, Curve((5.0, 65.0), (1.0, 0.0)))
    figures = [[600, 300, 9], [580, 340, 9], [600, 400, 10]]

    _, min_max = opinions(figures, shares=(0.4, 0.4, 0.2), curves=curves)

    assert min_max.first == "dunlin"
    assert min_max.reason is not None
    assert [stretch.criterion for stretch in min_max.reason.stretched] == ["price"]


def test_what_our_curve_does_not_tell_apart_is_no_reason_without_weight() -> None:
    curves = (*CURVES, Curve((20.0, 30.0), (1.0, 0.0)))
    figures = [[600, 300, 12], [580, 340, 8], [600, 400, 12]]

    _, min_max = opinions(figures, shares=(0.5, 0.5, 0.0), curves=curves)

    assert min_max.reason is not None
    assert [stretch.criterion for stretch in min_max.reason.stretched] == ["price"]


def test_our_first_leads_by_as_little_as_a_ranking_tells_apart() -> None:
    """A thousandth of a cent: 0.0000006 points, where a billionth is told apart."""
    for opinion in opinions([[600.00001, 300], [600, 300]]):
        assert (opinion.first, opinion.reason) == ("dunlin", None)


def test_what_is_held_back_is_first_nowhere() -> None:
    for opinion in opinions([[500, 250], [700, 300], [900, 350]], held_back=[True, False, False]):
        assert opinion.first == "dunlin"
        assert opinion.reason is None


def test_figures_that_do_not_fit_the_merits_are_refused() -> None:
    table, values = table_and_figures([[500, 250], [700, 300]])

    with pytest.raises(
        ValueError, match=r"^figures of shape \(1, 2\) for merits of shape \(2, 2\); the same shape and"
    ):
        second_opinions(table, np.array([0.5, 0.5]), values[:1], DIRECTIONS)


def test_no_products_are_refused() -> None:
    table, values = table_and_figures(np.empty((0, 2)))

    with pytest.raises(ValueError, match=r"; the same shape and at least one product are needed$"):
        second_opinions(table, np.array([0.5, 0.5]), values, DIRECTIONS)
