"""Levels, with the plain dynamic programme as their naive twin."""

import math

import numpy as np
import pytest

from spindlewise.bench.levels import BLOCK_S, LEAST_SPREAD_W, PENALTY, SHORTEST_BLOCKS, find_levels
from spindlewise.bench.synthetic_ride import Meter, Stretch, record, ride

nan = float("nan")


def test_the_levels_of_a_ride_are_found_to_a_block():
    plan = [
        Stretch(300, 150),
        Stretch(240, 200),
        Stretch(240, 250),
        Stretch(60, 140),
        Stretch(30, 0, 0),
        Stretch(90, 270),
    ]
    truth = ride(plan, 3)
    levels = find_levels(record(truth, Meter("a", noise_w=4), 3).power_w)
    starts = [level.start for level in levels]
    for planned in (0, 300, 540, 780, 840, 870):
        assert min(abs(start - planned) for start in starts) <= 2 * BLOCK_S
    assert len(levels) <= 7
    assert [level.power_w for level in levels[:5]] == pytest.approx([150, 200, 250, 145, 0], abs=12)


def test_a_steady_ride_is_one_level_and_its_noise_none():
    truth = ride([Stretch(1800, 200)], 4)
    assert len(find_levels(record(truth, Meter("a", noise_w=4), 4).power_w)) == 1


def test_missing_seconds_are_passed_over_and_what_is_all_missing_left_out():
    power = np.array([200.0] * 60 + [300.0] * 60)
    power[::3] = nan
    assert [(level.start, level.power_w) for level in find_levels(power)] == [(0, 200), (60, 300)]
    assert find_levels(np.full(60, nan)) == ()


@pytest.mark.parametrize("seconds", [0, 4, 14])
def test_too_short_for_a_level(seconds):
    assert find_levels(np.full(seconds, 200.0)) == ()


def test_the_shortest_ride_with_a_level():
    assert [(level.start, level.end) for level in find_levels(np.full(17, 200.0))] == [(0, 17)]
    lonely = np.full(15, nan)
    lonely[7] = 200
    assert [(level.start, level.end, level.power_w) for level in find_levels(lonely)] == [(0, 15, 200)]


@pytest.mark.parametrize("seed", range(12))
def test_no_cut_is_cheaper_than_the_one_found(seed):
    random = np.random.default_rng(seed)
    blocks = np.repeat(random.choice([100.0, 160.0, 220.0, 400.0], 8), random.integers(2, 7, 8))
    blocks = blocks + 6 * random.standard_normal(len(blocks))
    levels = find_levels(np.repeat(blocks, BLOCK_S))
    spread = max(1.4826 * np.median(np.abs(np.diff(blocks))) / math.sqrt(2), LEAST_SPREAD_W)
    penalty = PENALTY * spread**2 * math.log(len(blocks))

    def cost(begin, end):
        return float(np.sum((blocks[begin:end] - blocks[begin:end].mean()) ** 2))

    best = [0.0] + [math.inf] * len(blocks)
    for end in range(SHORTEST_BLOCKS, len(blocks) + 1):
        best[end] = min(
            best[begin] + cost(begin, end) + penalty * (begin > 0)
            for begin in range(end - SHORTEST_BLOCKS + 1)
        )
    found = sum(cost(level.start // BLOCK_S, level.end // BLOCK_S) for level in levels) + penalty * (
        len(levels) - 1
    )
    assert found == pytest.approx(best[-1])
