"""Martin, Milliken, Cobb, McFadden and Coggan, 1998, J Appl Biomech 14:276-291: the road power model.

The worked example's inputs are from a transcription; its total, 213.3 W, is from memory.
"""

from __future__ import annotations

import math

import pytest

from spindlewise.cost.climb import Climb, Road, climbing_speed_m_s, extra_power_w, power_needed_w


def test_the_papers_worked_example() -> None:
    """471.8 m in 56.42 s, 0.3 % up, 90 kg, wind 2.94 m/s thirty degrees off; kinetic part added here."""
    speed, head_wind = 471.8 / 56.42, 2.94 * math.cos(math.radians(30))
    road = Road(drivetrain_share=0.97698)
    steady = power_needed_w(speed, 0.003, 90.0, road, head_wind)
    parts = 158.8032 + 23.6257 + 1.3693 + 22.1491
    assert steady == pytest.approx(parts / 0.97698, abs=2e-4)
    kinetic = 0.5 * (90 + 0.14 / 0.311**2) * (8.45**2 - 8.28**2) / 56.42
    assert steady + kinetic / 0.97698 == pytest.approx(213.1592, abs=1e-4)
    assert steady + kinetic / 0.97698 == pytest.approx(213.3, abs=0.25)


def test_flat_at_ten_metres_a_second() -> None:
    assert power_needed_w(10.0, 0.0, 85.0) == pytest.approx(192.68005122950822, abs=1e-9)


def test_eight_percent_at_five_metres_a_second_there_and_back() -> None:
    needed = power_needed_w(5.0, 0.08, 85.0)
    assert needed == pytest.approx(375.40824280026305, abs=1e-9)
    assert climbing_speed_m_s(Climb(1000.0, 0.08, 85.0, needed)) == pytest.approx(5.0, abs=1e-12)


def test_a_hundred_grams_on_eight_percent_cost_0_417_watts() -> None:
    assert extra_power_w(100.0, 5.0, 0.08) == pytest.approx(0.4167995163, abs=1e-9)
    difference = power_needed_w(5.0, 0.08, 85.1) - power_needed_w(5.0, 0.08, 85.0)
    assert difference == pytest.approx(0.4167995163, abs=1e-9)
