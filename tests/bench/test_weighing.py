"""Repeated weighings."""

import csv
import math
from collections import defaultdict
from pathlib import Path

import numpy as np
import pytest
from scipy import stats

from spindlewise.bench.weighing import LEVEL, Scale, Weighing, WeightBasis, rounded_up, weigh

STEP_1 = Scale("counter scale", 1.0)
PAIR = WeightBasis("pair", "in", "off")
DEMO = Path(__file__).parents[2] / "catalog" / "bench" / "weighings.csv"


def weighed(*readings_g: float, scale: Scale = STEP_1, **options: object) -> Weighing:
    return weigh(readings_g, scale=scale, basis=PAIR, **options)  # type: ignore[arg-type]


def demo_weighings() -> list[tuple[float, list[float]]]:
    found = defaultdict(list)
    with DEMO.open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            key = tuple(
                row[name] for name in ("date", "product", "what", "batteries", "cleats", "resolution_g")
            )
            found[key].append(float(row["reading_g"]))
    return [(float(key[-1]), readings) for key, readings in found.items()]


def test_type_a_and_type_b_by_hand() -> None:
    found = weighed(371.0, 370.0, 371.0, 371.0, 372.0)
    assert found.mean_g == 371.0
    assert found.type_a_g == pytest.approx(math.sqrt(0.5 / 5))
    assert found.type_b_g == pytest.approx(1 / math.sqrt(12))
    assert found.combined_g == pytest.approx(math.hypot(found.type_a_g, found.type_b_g))
    assert (found.count, found.scale, found.basis) == (5, "counter scale", PAIR)
    assert found.left_out == ("calibration",)


@pytest.mark.parametrize(("resolution_g", "readings"), demo_weighings())
def test_the_demos_rule_is_kept(resolution_g: float, readings: list[float]) -> None:
    """2 * sqrt(s^2 / n + d^2 / 12), catalog/README.md."""
    found = weighed(*readings, scale=Scale("counter scale", resolution_g))
    rule = 2 * math.sqrt(np.var(readings, ddof=1) / len(readings) + resolution_g**2 / 12)
    assert found.expanded_g == pytest.approx(rule)


def test_students_t_is_wider_by_a_gram_for_three_of_the_demos_weighings() -> None:
    wider = 0
    for resolution_g, readings in demo_weighings():
        scale = Scale("counter scale", resolution_g)
        two, t = (rounded_up(weighed(*readings, scale=scale, coverage=c).expanded_g) for c in ("two", "t"))
        assert t - two in (0.0, 1.0)
        wider += t > two
    assert (wider, len(demo_weighings())) == (3, 23)


def test_effective_degrees_of_freedom_by_hand() -> None:
    found = weighed(371.0, 370.0, 371.0, 371.0, 372.0, coverage="t")
    by_hand = (0.1 + 1 / 12) ** 2 / (0.1**2 / 4)
    assert found.degrees_of_freedom == pytest.approx(by_hand)
    assert found.coverage_factor == pytest.approx(stats.t.ppf((1 + LEVEL) / 2, by_hand))


def test_without_scatter_the_step_alone_counts_and_t_is_two() -> None:
    found = weighed(256.0, 256.0, 256.0, coverage="t")
    assert found.degrees_of_freedom == math.inf
    assert found.coverage_factor == pytest.approx(2.0, abs=2e-5)
    assert found.expanded_g == pytest.approx(2 / math.sqrt(12), rel=1e-4)


def test_a_single_reading_says_that_nobody_repeated_it() -> None:
    found = weighed(256.0)
    assert found.left_out == ("readings: repeats", "calibration")
    assert (found.type_a_g, found.degrees_of_freedom) == (0.0, math.inf)


def test_a_tare_is_taken_off_with_its_own_doubt() -> None:
    found = weighed(411.0, 413.0, tare_readings_g=(40.0, 42.0))
    assert found.mean_g == 371.0
    assert found.type_a_g == pytest.approx(math.sqrt(1 + 1))
    assert found.type_b_g == pytest.approx(math.sqrt(2 / 12))
    assert weighed(411.0, 413.0, tare_readings_g=(40.0,)).left_out == ("tare: repeats", "calibration")


def test_a_certificate_corrects_and_adds_its_doubt() -> None:
    found = weighed(371.0, 371.0, scale=Scale("lab scale", 0.1, -0.6, 0.3, 3.0))
    assert found.mean_g == pytest.approx(370.4)
    assert found.left_out == ()
    assert found.type_b_g == pytest.approx(math.hypot(0.1, 0.1 / math.sqrt(12)))


@pytest.mark.parametrize(
    ("value", "step", "up"),
    [
        (0.856, 1.0, 1.0),
        (2 * math.hypot(math.sqrt(1 / 6), math.sqrt(1 / 12)), 1.0, 1.0),
        (1.08, 1.0, 2.0),
        (0.3, 0.1, 0.3),
        (0.0, 1.0, 0.0),
    ],
)
def test_an_uncertainty_is_rounded_up(value: float, step: float, up: float) -> None:
    assert rounded_up(value, step) == up


@pytest.mark.parametrize(
    "wrong",
    [
        {"resolution_g": 0.0},
        {"resolution_g": 1.0, "calibration_g": -1.0},
        {"resolution_g": float("nan")},
        {"resolution_g": 1.0, "calibration_coverage": 0.0},
    ],
)
def test_scales_that_make_no_sense_are_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="the resolution is above 0"):
        Scale("counter scale", **wrong)


@pytest.mark.parametrize("readings", [(), (0.0,), (-3.0, 1.0), (float("nan"),), (float("inf"),)])
def test_readings_that_make_no_sense_are_refused(readings: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="each finite and above 0 g"):
        weighed(*readings)


def test_an_unknown_coverage_is_refused() -> None:
    with pytest.raises(ValueError, match="one of: t, two"):
        weighed(1.0, coverage="three")


def test_two_sigma_intervals_hold_the_true_weight() -> None:
    """A scale that shows whole grams, a hand that scatters by 0.8 g, five readings, 1,000 pedals."""
    rng = np.random.default_rng(60)
    held = {"two": 0, "t": 0}
    for _ in range(1000):
        true = rng.uniform(300, 301)
        readings = np.round(true + rng.normal(0, 0.8, 5))
        for coverage in ("two", "t"):
            found = weighed(*readings, coverage=coverage)
            held[coverage] += abs(found.mean_g - true) <= found.expanded_g
    assert held["two"] >= 930
    assert held["t"] >= 950


def test_a_certificate_states_two_standard_uncertainties_unless_it_says_else() -> None:
    found = weighed(371.0, 371.0, scale=Scale("lab scale", 0.1, calibration_g=0.4))
    assert found.type_b_g == pytest.approx(math.hypot(0.2, 0.1 / math.sqrt(12)))
