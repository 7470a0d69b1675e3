"""The uncertainty of a reading."""

from __future__ import annotations

import math

import numpy as np
import pytest

from spindlewise.reception.budget import Budget
from spindlewise.reception.crank_setting import crank_setting_error
from spindlewise.reception.doubled_side import doubled_error
from spindlewise.reception.reading_mode import Mode
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty
from spindlewise.reception.unmeasured import Plausible, Unmeasured

ROOT_3 = math.sqrt(3)


def test_a_claimed_tolerance_is_rectangular() -> None:
    budget = reading_uncertainty("both sides", tolerance_pct=1.5)

    assert budget.combined_pct == pytest.approx(1.5 / ROOT_3)
    assert budget.expanded_pct == pytest.approx(3 / ROOT_3)
    assert budget.bias_pct == 0
    assert (budget.low_error_pct, budget.high_error_pct) == pytest.approx((-3 / ROOT_3, 3 / ROOT_3))
    assert budget.expanded_low_pct == budget.expanded_high_pct == budget.expanded_pct
    assert budget.left_out == ("temperature",)
    assert (budget.largest, budget.missing, budget.note) == ("claimed tolerance", (), "")


def test_an_unknown_tolerance_gives_no_figure_and_is_named() -> None:
    budget = reading_uncertainty("both sides", tolerance_pct=None, temperature_pct=0.5)

    assert budget.missing == ("claimed tolerance",)
    assert budget.expanded_pct is budget.combined_pct is budget.bias_pct is budget.expanded_high_pct is None
    assert [cause.name for cause in budget.contributions] == ["temperature"]
    assert (budget.largest, budget.note) == ("temperature", "a figure is missing")


class TestBench:
    def test_what_was_seen_stands_in_place_of_the_claim(self) -> None:
        budget = reading_uncertainty("both sides", tolerance_pct=1, bench=BenchEvidence(-2, 0.6, 0.3))

        assert [cause.name for cause in budget.contributions] == ["bench bias", "bench spread"]
        assert budget.contributions[0].note == "in place of the claimed tolerance"
        assert budget.combined_pct == pytest.approx(math.hypot(0.3 / ROOT_3, 0.6))
        assert budget.expanded_pct == pytest.approx(2 + 2 * math.hypot(0.3 / ROOT_3, 0.6))
        assert budget.bias_pct == -2
        assert (budget.largest, budget.note) == ("bench bias", "an uncorrected bias is in the figure")

    def test_it_also_serves_where_nothing_is_claimed(self) -> None:
        budget = reading_uncertainty("both sides", tolerance_pct=None, bench=BenchEvidence(0, 0.5))

        assert budget.expanded_pct == pytest.approx(1)
        assert (budget.missing, budget.contributions[0].note) == ((), "no tolerance is claimed")

    @pytest.mark.parametrize(
        ("bench", "name"),
        [
            ((math.nan, 1.0, 0.0), "bias_pct"),
            ((0.0, -1.0, 0.0), "spread_pct"),
            ((0.0, 1.0, math.inf), "bias_plus_minus_pct"),
        ],
    )
    def test_impossible_evidence_is_refused(self, bench: tuple[float, float, float], name: str) -> None:
        with pytest.raises(ValueError, match=f"^{name} is "):
            BenchEvidence(*bench)


class TestDoubledSide:
    def test_the_middle_is_a_bias_and_the_range_a_spread(self) -> None:
        error = doubled_error((0.47, 0.49), "left")

        budget = reading_uncertainty("one side doubled", tolerance_pct=1.5, doubled=error)

        assert budget.bias_pct == pytest.approx(-4)
        assert budget.combined_pct == pytest.approx(math.hypot(1.5, 2) / ROOT_3)
        assert budget.expanded_pct == pytest.approx(4 + 2 * 2.5 / ROOT_3)
        assert budget.low_error_pct == pytest.approx(-budget.expanded_pct)
        assert budget.expanded_low_pct == pytest.approx(2 + 3 / ROOT_3)
        assert budget.expanded_high_pct == pytest.approx(6 + 3 / ROOT_3)
        assert budget.largest == "doubled side"

    def test_a_lone_wide_range_does_not_leave_out_its_own_expected_figure(self) -> None:
        budget = reading_uncertainty(
            "one side doubled", tolerance_pct=0, doubled=doubled_error((0.4, 0.6), "left")
        )

        assert budget.expanded_pct == budget.expanded_high_pct == pytest.approx(40 / ROOT_3)
        assert budget.expanded_low_pct == 0

    def test_a_population_balance_is_marked(self) -> None:
        budget = reading_uncertainty("one side doubled", tolerance_pct=2, doubled=doubled_error(None))

        assert "population" in budget.contributions[-1].note
        assert budget.bias_pct == 0

    def test_without_a_balance_there_is_no_figure(self) -> None:
        budget = reading_uncertainty("one side doubled", tolerance_pct=None)

        assert budget.missing == ("claimed tolerance", "doubled side")

    def test_both_sides_have_no_such_error(self) -> None:
        with_balance = reading_uncertainty("both sides", tolerance_pct=1, doubled=doubled_error((0.4, 0.45)))

        assert with_balance == reading_uncertainty("both sides", tolerance_pct=1)


class TestSettings:
    def test_temperature_is_rectangular_and_in_proportion(self) -> None:
        ten = reading_uncertainty("both sides", tolerance_pct=0, temperature_pct=0.6)
        five = reading_uncertainty("both sides", tolerance_pct=0, temperature_pct=0.6, temperature_change_c=5)

        assert ten.combined_pct == pytest.approx(0.6 / ROOT_3)
        assert five.combined_pct == pytest.approx(0.3 / ROOT_3)
        assert (ten.largest, ten.left_out) == ("temperature", ())

    def test_a_wrong_crank_length_is_a_fixed_bias(self) -> None:
        budget = reading_uncertainty(
            "both sides", tolerance_pct=1, crank=crank_setting_error(170, 172.5), temperature_pct=0
        )

        assert budget.bias_pct == pytest.approx(-1.449, abs=1e-3)
        assert budget.contributions[-1].kind == "fixed"
        assert budget.contributions[-1].note == "170 mm set, 172.5 mm ridden"
        assert (budget.largest, budget.left_out) == ("crank length setting", ())

    def test_opposite_biases_take_each_other_away(self) -> None:
        budget = reading_uncertainty(
            "both sides", tolerance_pct=None, bench=BenchEvidence(2, 0.5), crank=crank_setting_error(98, 100)
        )

        assert budget.bias_pct == pytest.approx(0)

    @pytest.mark.parametrize("name", ["tolerance_pct", "temperature_pct", "temperature_change_c"])
    def test_impossible_figures_are_refused(self, name: str) -> None:
        figures = {"tolerance_pct": 1.0, "temperature_pct": 1.0, "temperature_change_c": 10.0} | {name: -1.0}

        with pytest.raises(ValueError, match=f"^{name} is -1.0; it is zero or more, and finite$"):
            reading_uncertainty("both sides", **figures)  # type: ignore[arg-type]


def test_a_perfect_meter_has_no_largest_cause() -> None:
    budget = reading_uncertainty("both sides", tolerance_pct=0)

    assert (budget.expanded_pct, budget.largest) == (0, "")


@pytest.mark.parametrize(
    ("mode", "missing", "note"),
    [
        ("one side only", (), "one side is not a total power"),
        ("nothing", (), "nothing arrives"),
        ("unknown", ("reading mode",), "what arrives is unknown"),
    ],
)
def test_what_is_no_total_power_has_no_uncertainty(mode: Mode, missing: tuple[str, ...], note: str) -> None:
    budget = reading_uncertainty(mode, tolerance_pct=1)

    assert budget.expanded_pct is budget.low_error_pct is budget.high_error_pct is None
    assert (budget.contributions, budget.missing, budget.note) == ((), missing, note)


def test_a_mode_that_is_none_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^the mode is 'both'; it is one of: both sides, one side doubled, "
    ):
        reading_uncertainty("both", tolerance_pct=1)  # type: ignore[arg-type]


def test_drawn_rides_agree_with_the_budget() -> None:
    """Monte Carlo of the full product model; the budget is first order, hence the tolerance."""
    draw, n = np.random.default_rng(20260101), 200_000
    share = draw.uniform(0.47, 0.49, n)
    tolerance = draw.uniform(-1.5, 1.5, n)
    drift = draw.uniform(-0.5, 0.5, n)
    shown = 2 * share * (1 + tolerance / 100) * (1 + drift / 100)
    error_pct = 100 * (shown - 1)

    budget = reading_uncertainty(
        "one side doubled",
        tolerance_pct=1.5,
        temperature_pct=0.5,
        doubled=doubled_error((0.47, 0.49), "left"),
    )

    assert budget.combined_pct is not None
    standard_error = budget.combined_pct / math.sqrt(n)
    assert error_pct.mean() == pytest.approx(budget.bias_pct, abs=4 * standard_error)
    # the tolerance acts on a reading that is 4 % low, so the product model is narrower by up to 4 %
    assert error_pct.std() == pytest.approx(budget.combined_pct, rel=0.03)
    inside = (budget.low_error_pct <= error_pct) & (error_pct <= budget.high_error_pct)
    assert 0.95 <= inside.mean() <= 0.99
    assert (np.abs(error_pct) <= budget.expanded_pct).mean() >= 0.95


def causes_of(budget: Budget) -> dict[str, tuple[str, str, float, float]]:
    return {c.name: (c.kind, c.note, c.standard_pct, c.bias_pct) for c in budget.contributions}


class TestEveryCauseSaysWhereItComesFrom:
    SPANS = Unmeasured(temperature=Plausible(0.3, 1.2), bench_spread=Plausible(0.6, 1.5))

    def test_a_bare_claim_on_one_side_doubled(self) -> None:
        budget = reading_uncertainty(
            "one side doubled",
            tolerance_pct=1.5,
            doubled=doubled_error((0.47, 0.49), "left"),
            temperature_change_c=5,
            unmeasured=self.SPANS,
        )

        assert causes_of(budget) == {
            "claimed tolerance": (
                "rectangular",
                "claimed plus-minus over root three",
                pytest.approx(1.5 / ROOT_3),
                0.0,
            ),
            "bench spread": (
                "not measured",
                "no bench ride: 0.6 to 1.5 % is plausible, 1.5 % counts",
                1.5,
                0.0,
            ),
            "doubled side": (
                "rectangular",
                "the buyer's own balance",
                pytest.approx(2 / ROOT_3),
                pytest.approx(-4.0),
            ),
            "temperature": (
                "not measured",
                "5 degrees without a new zero offset: 0.15 to 0.6 % is plausible, 0.6 % counts",
                pytest.approx(0.6 / ROOT_3),
                0.0,
            ),
        }
        assert budget.expanded_low_pct == pytest.approx(2 + 2 * math.hypot(1.5 / ROOT_3, 0.6, 0.15 / ROOT_3))
        # the kindest balance, with what nobody has measured at its least kind
        assert budget.known_low_pct == pytest.approx(2 + 2 * math.hypot(1.5 / ROOT_3, 1.5, 0.6 / ROOT_3))

    def test_a_bench_ride_a_known_drift_and_a_wrong_crank_length(self) -> None:
        budget = reading_uncertainty(
            "one side doubled",
            tolerance_pct=1.5,
            bench=BenchEvidence(-2, 0.6, 0.3),
            doubled=doubled_error(None),
            temperature_pct=0.6,
            crank=crank_setting_error(170, 172.5),
        )

        population = doubled_error(None)
        assert causes_of(budget) == {
            "bench bias": (
                "rectangular",
                "in place of the claimed tolerance",
                pytest.approx(0.3 / ROOT_3),
                -2,
            ),
            "bench spread": ("normal", "one standard deviation at the bench", 0.6, 0.0),
            "doubled side": (
                "normal",
                "a population's balance, not the buyer's",
                population.standard_pct,
                0.0,
            ),
            "temperature": (
                "rectangular",
                "10 degrees without a new zero offset",
                pytest.approx(0.6 / ROOT_3),
                0.0,
            ),
            "crank length setting": (
                "fixed",
                "170 mm set, 172.5 mm ridden",
                0.0,
                pytest.approx(-1.449, abs=1e-3),
            ),
        }

    def test_where_no_figure_is_given_what_is_left_out_is_still_named(self) -> None:
        unclaimed = reading_uncertainty("both sides", tolerance_pct=None)

        assert (unclaimed.missing, unclaimed.left_out) == (("claimed tolerance",), ("temperature",))
        for mode in ("unknown", "nothing"):
            assert reading_uncertainty(mode, tolerance_pct=1).left_out == ()
