"""What a buyer should know of the question itself."""

from decimal import Decimal

import numpy as np
import pytest

from spindlewise.decide.table import MeritTable
from spindlewise.decide.warnings import (
    MissedByLittle,
    WithoutEffect,
    all_alike,
    counted_twice,
    missed_by_little,
    nobody_left,
    without_effect,
)

NAMES = ("avocet", "bittern", "curlew", "dunlin", "egret")


def table_of(**merits_by_criterion) -> MeritTable:
    merits = np.array(list(merits_by_criterion.values()), dtype=float).T
    return MeritTable(NAMES[: len(merits)], tuple(merits_by_criterion), merits, merits, merits)


RISING, FALLING, MIXED = [0.1, 0.3, 0.4, 0.6, 0.9], [0.9, 0.7, 0.6, 0.4, 0.1], [0.5, 0.1, 0.9, 0.2, 0.6]
EVEN = np.full(3, 1 / 3)


def test_criteria_that_move_together_are_counted_twice() -> None:
    table = table_of(price=RISING, ownership=[0.2, 0.3, 0.5, 0.6, 1.0], stack=MIXED)

    (found,) = counted_twice(table, EVEN)

    assert (found.kind, found.first, found.second) == ("move together", "price", "ownership")
    assert found.spearman == pytest.approx(1.0)
    assert found.pearson == pytest.approx(np.corrcoef(RISING, [0.2, 0.3, 0.5, 0.6, 1.0])[0, 1])


def test_criteria_that_pull_apart_are_told_with_their_sign() -> None:
    (found,) = counted_twice(table_of(price=RISING, weight=FALLING, stack=MIXED), EVEN)

    assert (found.kind, found.first, found.second) == ("pull apart", "price", "weight")
    assert (found.pearson, found.spearman) == (pytest.approx(-1.0), pytest.approx(-1.0))


@pytest.mark.parametrize("other", [[0.2, 0.3, 0.5, 0.6, 1.0], [0.8, 0.7, 0.5, 0.4, 0.0]])
def test_what_correlates_exactly_as_high_as_asked_is_named(other) -> None:
    table = table_of(price=RISING, ownership=other)
    (found,) = counted_twice(table, EVEN[:2])
    limit = min(abs(found.pearson), abs(found.spearman))

    assert counted_twice(table, EVEN[:2], high=limit) == (found,)
    assert counted_twice(table, EVEN[:2], high=np.nextafter(limit, 2.0)) == ()


def test_one_outlier_alone_is_no_likeness() -> None:
    """Pearson is high by one product far off, Spearman is not."""
    table = table_of(price=[0.0, 0.02, 0.01, 0.03, 1.0], weight=[0.03, 0.0, 0.02, 0.01, 1.0], stack=MIXED)

    assert np.corrcoef(table.expected[:, 0], table.expected[:, 1])[0, 1] > 0.99
    assert counted_twice(table, EVEN) == ()


def test_kin_are_named_however_little_they_correlate() -> None:
    table = table_of(price=RISING, ownership=MIXED, stack=[0.5] * 5)

    found = counted_twice(table, EVEN, kin=[("price", "ownership", "rent"), ("ownership", "stack")])

    assert [(each.kind, each.first, each.second) for each in found] == [
        ("kin", "price", "ownership"),
        ("kin", "ownership", "stack"),
    ]
    assert found[0].pearson == pytest.approx(np.corrcoef(RISING, MIXED)[0, 1])
    # ranks 1 to 5 against 3, 1, 5, 2, 4: 1 - 6 * 14 / (5 * 24)
    assert found[0].spearman == pytest.approx(0.3)
    assert (found[1].pearson, found[1].spearman) == (None, None)


def test_what_has_no_weight_is_not_counted_twice() -> None:
    table = table_of(price=RISING, ownership=RISING, stack=MIXED)

    assert counted_twice(table, np.array([0.5, 0.0, 0.5]), kin=[("price", "ownership")]) == ()


def test_few_candidates_correlate_by_chance() -> None:
    table = table_of(price=RISING[:4], ownership=RISING[:4])

    assert counted_twice(table, np.array([0.5, 0.5])) == ()


def test_a_criterion_on_which_all_are_alike_is_named_if_weighed() -> None:
    table = table_of(price=RISING, warranty=[0.5, 0.505, 0.5, 0.5, 0.5], stack=[0.2] * 5)

    (found,) = all_alike(table, np.array([0.6, 0.4, 0.0]))

    assert (found.kind, found.criterion, found.share) == ("all alike", "warranty", 0.4)
    assert found.spread == pytest.approx(0.005)
    assert all_alike(table, np.array([0.6, 0.4, 0.0]), within=0.001) == ()


def test_two_candidates_may_be_alike_and_the_limit_itself_is() -> None:
    table = table_of(price=[0.5, 0.75], warranty=[0.4, 0.4])

    assert [each.criterion for each in all_alike(table, np.array([0.5, 0.5]))] == ["warranty"]
    named = all_alike(table, np.array([0.5, 0.5]), within=0.25)
    assert [(each.criterion, each.spread) for each in named] == [("price", 0.25), ("warranty", 0.0)]


def test_one_candidate_is_not_alike_to_anyone() -> None:
    assert all_alike(table_of(price=[0.5]), np.array([1.0])) == ()


def test_a_weight_that_decides_nothing_is_named() -> None:
    table = table_of(price=[0.9, 0.5, 0.1], weight=[0.6, 0.5, 0.4], stack=[0.0, 0.1, 0.6])

    found = without_effect(table, np.array([0.5, 0.2, 0.3]))

    assert found == (WithoutEffect("order stays", "weight", 0.2), WithoutEffect("order stays", "stack", 0.3))


def test_a_weight_that_decides_only_who_is_last_leaves_the_first() -> None:
    table = table_of(price=[0.9, 0.5, 0.4], weight=[0.5, 0.1, 0.4])

    assert without_effect(table, np.array([0.6, 0.4])) == (
        WithoutEffect("order stays", "price", 0.6),
        WithoutEffect("first stays", "weight", 0.4),
    )


def test_a_weight_that_decides_who_is_first_is_not_named() -> None:
    table = table_of(price=[0.9, 0.5], weight=[0.1, 0.6])

    assert without_effect(table, np.array([0.5, 0.5])) == (WithoutEffect("order stays", "price", 0.5),)


@pytest.mark.parametrize(
    ("table", "shares"),
    [(table_of(price=[0.5], weight=[0.1]), [0.5, 0.5]), (table_of(price=RISING, weight=MIXED), [1.0, 0.0])],
)
def test_with_one_product_or_one_weight_there_is_nothing_to_leave_out(table, shares) -> None:
    assert without_effect(table, np.array(shares)) == ()


def test_what_is_held_back_does_not_count_as_first() -> None:
    table = table_of(price=[1.0, 0.5, 0.2], weight=[1.0, 0.1, 0.9])

    shares, price_stays = np.array([0.7, 0.3]), WithoutEffect("order stays", "price", 0.7)

    assert without_effect(table, shares, held_back=[True, False, False]) == (price_stays,)
    assert without_effect(table, shares) == (price_stays, WithoutEffect("first stays", "weight", 0.3))


def test_the_need_that_brings_back_most_comes_first() -> None:
    passes = np.array(
        [
            [True, False, True],
            [False, True, True],
            [True, False, True],
            [False, False, True],
            [True, False, True],
        ]
    )

    found = nobody_left(NAMES, ("budget", "ANT+", "rider weight"), passes)

    assert found is not None
    assert found.kind == "nobody left"
    assert found.relief == (("ANT+", ("avocet", "curlew", "egret")), ("budget", ("bittern",)))
    assert [product for product, _ in found.nearest] == ["avocet", "bittern", "curlew", "egret"]
    assert dict(found.nearest)["bittern"] == ("budget",)


def test_needs_that_bring_back_as_many_come_by_name_after_one_that_brings_back_more() -> None:
    # avocet costs too much, bittern lacks ANT+, curlew and dunlin bear too little
    passes = np.array([[False, True, True], [True, False, True], [True, True, False], [True, True, False]])

    found = nobody_left(NAMES[:4], ("budget", "ANT+", "rider weight"), passes)

    assert found is not None
    assert found.relief == (
        ("rider weight", ("curlew", "dunlin")),
        ("ANT+", ("bittern",)),
        ("budget", ("avocet",)),
    )


def test_where_no_single_need_helps_the_nearest_products_say_what_they_fail() -> None:
    passes = np.array([[False, False, True], [False, False, False]])

    found = nobody_left(NAMES[:2], ("budget", "ANT+", "rider weight"), passes)

    assert found is not None
    assert found.relief == ()
    assert found.nearest == (("avocet", ("budget", "ANT+")),)


def test_where_anybody_is_left_or_nobody_ever_was_nothing_is_said() -> None:
    assert nobody_left(NAMES[:2], ("budget",), np.array([[True], [False]])) is None
    assert nobody_left((), ("budget",), np.empty((0, 1))) is None
    assert nobody_left(NAMES[:1], (), np.empty((1, 0))) is None


def test_passes_of_another_shape_are_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^passes have shape \(1, 1\); \(2, 1\), products by needs, is needed$"
    ):
        nobody_left(NAMES[:2], ("budget",), np.array([[True]]))


def test_a_budget_missed_by_little() -> None:
    prices = [Decimal("1020.00"), Decimal("1000.00"), Decimal("1050.00"), None, Decimal("1050.01")]

    found = missed_by_little(NAMES, prices, Decimal(1000))

    assert found == (
        MissedByLittle("missed by little", "avocet", Decimal(1020), Decimal(20), Decimal(2)),
        MissedByLittle("missed by little", "curlew", Decimal(1050), Decimal(50), Decimal(5)),
    )
    assert len(missed_by_little(NAMES, prices, Decimal(1000), Decimal(10))) == 3
    # the same in thousands
    (small,) = missed_by_little(NAMES[:1], [Decimal("1.02")], Decimal(1))
    assert (small.over, small.over_pct) == (Decimal("0.02"), Decimal(2))


def test_equal_prices_come_by_product_id() -> None:
    found = missed_by_little(("siskin", "avocet"), [Decimal(101), Decimal(101)], Decimal(100))

    assert [each.product for each in found] == ["avocet", "siskin"]


@pytest.mark.parametrize(("prices", "budget"), [([], Decimal(100)), ([Decimal(1)], Decimal(0))])
def test_prices_or_a_budget_that_cannot_be_are_refused(prices, budget) -> None:
    with pytest.raises(ValueError, match=r"; one price a product and a budget above 0 are needed$"):
        missed_by_little(NAMES[:1], prices, budget)
