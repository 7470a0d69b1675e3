"""The ladder against published incremental cost-effectiveness tables; cost = price, effect = grams saved."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

import pytest

from spindlewise.cost.ladder import LadderStep, ladder
from spindlewise.cost.quadrants import Offer

HEAVIEST_G = Decimal(1000)

CDIFF = {
    "s3": ("57336.0059896538", 12.9399639202408),
    "s27": ("57541.2526373815", 13.0140640696275),
    "s33": ("57642.2587507842", 13.0389116321918),
    "s31": ("57934.0743411241", 13.0966257932217),
    "s43": ("58072.1137208494", 13.11285766912),
    "s44": ("58665.7823044647", 13.1283328397025),
    "s39": ("57814.6470919581", 13.0462790163185),
    "s4": ("57887.481549326", 12.9970657153765),
    "s13": ("58018.6252420203", 13.0650412387992),
    "s37": ("58081.7947984323", 13.1029711156978),
    "s20": ("58634.2026441398", 13.1100568867995),
}


def climb(table: Mapping[str, tuple[str, float]], start: str) -> tuple[LadderStep, ...]:
    """The ladder with each strategy's effect as grams taken off a heavy pedal weighed without error."""
    offers = {
        name: Offer(name, Decimal(cost), *(3 * [float(HEAVIEST_G - Decimal(str(effect)))]))
        for name, (cost, effect) in table.items()
    }
    return ladder(offers.pop(start), list(offers.values()))


def statuses(steps: tuple[LadderStep, ...]) -> dict[str, str]:
    return {step.product: step.status for step in steps}


def test_us_veterans_affairs_health_economics_resource_center_teaching_example() -> None:
    table = {
        "E": ("55000", 5.0),
        "D": ("35000", 4.0),
        "C": ("25000", 3.0),
        "B": ("10000", 2.0),
        "A": ("12000", 1.5),
        "UC": ("5000", 1.0),
    }
    steps = climb(table, "UC")
    assert [(s.product, s.step_cost_per_gram) for s in steps[:4]] == [
        ("UC", None),
        ("B", 5000),
        ("D", 12500),
        ("E", 20000),
    ]
    assert statuses(steps[4:]) == {"A": "dominated", "C": "extendedly dominated"}


def test_paltiel_2006_expanded_hiv_screening_table_4() -> None:
    """Paltiel et al. 2006; costs in dollars, effects in quality-adjusted life months: 12 times a year."""
    table = {
        "status quo": ("26000", 277.25),
        "one time": ("27000", 277.57),
        "5yr": ("28020", 277.78),
        "3yr": ("28440", 277.83),
        "annual": ("29440", 277.76),
    }
    steps = climb(table, "status quo")
    assert [s.product for s in steps] == ["status quo", "one time", "5yr", "3yr", "annual"]
    a_year = [12 * s.step_cost_per_gram for s in steps[1:4] if s.step_cost_per_gram is not None]
    assert a_year[0] == 37500
    assert float(a_year[1]) == pytest.approx(408000 / 7, rel=1e-15)
    assert a_year[2] == 100800
    assert (steps[4].status, steps[4].dominated_by) == ("dominated", ("3yr", "5yr"))


def test_frick_2007_johns_hopkins_lecture_11() -> None:
    table = {
        "1": ("300000", 25.0),
        "2": ("200000", 20.0),
        "3": ("450000", 50.0),
        "4": ("375000", 40.0),
        "5": ("400000", 15.0),
    }
    steps = climb(table, "2")
    assert statuses(steps) == {
        "2": "baseline",
        "3": "rung",
        "1": "extendedly dominated",
        "4": "extendedly dominated",
        "5": "dominated",
    }
    assert float(steps[1].step_cost_per_gram or 0) == pytest.approx(25000 / 3, rel=1e-15)


def test_of_two_equal_effects_only_the_cheaper_stays_and_has_no_price() -> None:
    """The tie case of a public cost-effectiveness package's own tests."""
    table = {
        "No Treat": ("163771.0", 6.48273),
        "Treat all": ("164848.7", 6.52861),
        "Test & treat": ("163765.1", 6.52861),
    }
    steps = climb(table, "No Treat")
    assert [(s.product, s.status) for s in steps] == [
        ("No Treat", "baseline"),
        ("Test & treat", "lighter and not dearer"),
        ("Treat all", "dominated"),
    ]
    assert steps[0].dominated_by == steps[2].dominated_by == ("Test & treat",)
    assert [s.step_cost_per_gram for s in steps] == [None, None, None]


def test_rajasingham_2020_clostridioides_difficile_all_eleven_strategies() -> None:
    steps = climb(CDIFF, "s3")
    assert [s.product for s in steps[:6]] == ["s3", "s27", "s33", "s31", "s43", "s44"]
    published = [2769.85470915263, 4065.03105249231, 5056.2216470406, 8504.2160616553, 38362.6519947134]
    assert [float(s.step_cost_per_gram or 0) for s in steps[1:6]] == pytest.approx(published, rel=1e-6)
    assert statuses(steps[6:]) == {
        "s39": "extendedly dominated",
        "s4": "dominated",
        "s13": "dominated",
        "s37": "dominated",
        "s20": "dominated",
    }
