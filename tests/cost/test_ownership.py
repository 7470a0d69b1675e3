"""The account over the buyer's years."""

from __future__ import annotations

from decimal import Decimal, localcontext

import pytest

from spindlewise.cost.ownership import CostLine, Upkeep, cells, charging, ownership

D = Decimal


def test_everything_adds_up_by_the_year_and_by_the_hour() -> None:
    account = ownership(
        D("649.90"),
        D(4),
        D(250),
        [
            cells("coin cells", D("2.40"), 2, D(120)),
            Upkeep("bearings", D("35.00"), every_hours=D(600), every_years=D(3)),
            charging("charging", D(5), D("0.40"), D(40)),
        ],
    )
    assert account.lines == (
        CostLine("purchase", D(1), D("649.90"), D("649.90")),
        CostLine("coin cells", D(8), D("4.80"), D("38.40")),
        CostLine("bearings", D(1), D("35.00"), D("35.00")),
        CostLine("charging", D(25), D("0.002"), D("0.05")),
    )
    assert account.known_total == D("723.35")
    assert (account.per_year, account.per_hour) == (D("180.8375"), D("0.72335"))
    assert account.complete


@pytest.mark.parametrize(
    ("hours", "times"), [(D(99), 0), (D(100), 0), (D("100.1"), 1), (D(200), 1), (D(201), 2), (D(0), 0)]
)
def test_the_first_set_comes_with_the_product_and_the_last_is_used_up(hours: Decimal, times: int) -> None:
    account = ownership(D(0), D(1), hours, [cells("cells", D(1), 1, D(100))])
    assert account.lines[1].times == times


def test_whichever_comes_first_hours_or_years_decides() -> None:
    seal = Upkeep("seals", D(10), every_hours=D(1000), every_years=D(1))
    assert ownership(D(0), D(3), D(100), [seal]).lines[1].times == 2
    assert ownership(D(0), D(3), D(2000), [seal]).lines[1].times == 5


def test_what_is_not_included_is_bought_from_the_start() -> None:
    assert (
        ownership(D(0), D(1), D(10), [Upkeep("cells", D(3), D(100), first_included=False)]).known_total == 3
    )


@pytest.mark.parametrize(
    "part",
    [
        Upkeep("part", None, every_hours=D(100)),
        Upkeep("part", D(5)),
        cells("part", None, 2, D(100)),
        cells("part", D(1), 2, None),
        charging("part", None, D("0.40"), D(40)),
        charging("part", D(5), None, D(40)),
    ],
)
def test_an_unknown_part_is_listed_and_not_free(part: Upkeep) -> None:
    account = ownership(D(500), D(2), D(100), [part])
    assert (account.unknown, account.known_total, account.complete) == (("part",), D(500), False)
    assert len(account.lines) == 1


def test_an_unknown_purchase_price_is_listed_too() -> None:
    account = ownership(None, D(2), D(100))
    assert (account.unknown, account.known_total, account.lines) == (("purchase",), D(0), ())


def test_who_does_not_ride_pays_nothing_per_hour_that_could_be_told() -> None:
    assert ownership(D(500), D(2), D(0)).per_hour is None


def test_the_account_does_not_depend_on_the_threads_decimal_context() -> None:
    with localcontext() as context:
        context.prec = 2
        account = ownership(D("649.90"), D(3), D(100), [cells("cells", D("2.45"), 3, D(100))])
    assert account.known_total == D("664.60")
    assert len(account.per_year.as_tuple().digits) == 28


@pytest.mark.parametrize(
    ("price", "years", "hours", "says"),
    [
        (D(1), D(0), D(1), "^0 years of owning were given; there must be more than zero$"),
        (D(1), D("NaN"), D(1), "NaN years"),
        (D(1), D(1), D(-1), "^-1 hours a year were given; there must be zero or more$"),
        (D(-1), D(1), D(1), "^the price is -1; a price is zero or more$"),
    ],
)
def test_an_account_of_nothing_is_refused(price: Decimal, years: Decimal, hours: Decimal, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        ownership(price, years, hours)


def test_upkeep_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^part has the price -1; a price is zero or more$"):
        Upkeep("part", D(-1))
    with pytest.raises(ValueError, match=r"^part is due every 0; an interval is more than zero$"):
        Upkeep("part", D(1), every_years=D(0))


def test_a_part_may_cost_nothing_and_the_first_charge_is_the_owners_own() -> None:
    account = ownership(D(600), D(3), D(100), [Upkeep("cleats of a friend", D(0), every_years=D(1))])
    assert (account.known_total, account.unknown) == (D(600), ())
    assert charging("charging", D(4), D("0.25"), D(50)).first_included is False
