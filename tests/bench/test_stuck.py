import numpy as np

from spindlewise.bench.alignment import align
from spindlewise.bench.stuck import find_repeats
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

nan = float("nan")


def repeats_of(power, *others):
    power = np.array(power, dtype=float)
    return find_repeats(
        np.arange(float(len(power))), power, np.array(others, dtype=float).reshape(len(others), len(power))
    )


def test_a_held_reading_is_found_in_a_ride_and_nothing_else():
    truth = ride([Stretch(900, 200)], 1)
    a = record(truth, Meter("a", noise_w=4, dropouts=(Dropout(400, 10, "held"),)), 1)
    b = record(truth, Meter("b", noise_w=4), 1)
    aligned = align([a, b], "a")
    found = find_repeats(aligned.seconds, aligned.power_w[0], aligned.power_w[1:])
    assert len(found.runs) == 1
    assert found.runs[0].start_s in (398, 399)
    assert found.stuck_s == found.runs[0].length_s in (11, 12)
    assert found.each_value_times == 1
    assert find_repeats(aligned.seconds, aligned.power_w[1], aligned.power_w[:1]).runs == ()


def test_a_steady_trainer_repeats_itself_without_being_stuck():
    random = np.random.default_rng(3)
    smooth = np.round(200 + np.repeat(random.standard_normal(200), 4))
    other = 200 + 5 * random.standard_normal(800)
    found = repeats_of(smooth, other)
    assert found.each_value_times >= 4
    assert found.runs == ()


def test_a_sensor_that_speaks_every_other_second():
    values = np.repeat(np.random.default_rng(1).integers(150, 250, 300), 2).astype(float)
    found = repeats_of(values, values + 1)
    assert found.each_value_times == 2
    assert 45 < found.equal_pct < 55


def test_without_another_recording_nothing_is_claimed():
    power = [201, 199, *[200] * 12, 203, 198, 204, 197]
    alone = repeats_of(power, [nan] * 18)
    assert [(run.length_s, run.stuck) for run in alone.runs] == [(12, False)]
    assert np.isnan(alone.runs[0].moved_w)
    still = repeats_of(power, [200] * 18)
    assert (still.runs[0].moved_w, still.stuck_s) == (0, 0)


def test_zeros_and_missing_values_are_no_readings():
    found = repeats_of([0] * 20 + [nan] * 20, [100] * 40)
    assert (found.runs, found.each_value_times, found.equal_pct) == ((), 1, 0)
    assert repeats_of([]).runs == ()


def test_a_single_held_value_over_all_the_ride_is_usual_there():
    assert repeats_of([200] * 30, range(30)).runs == ()


def test_neighbours_that_are_never_equal_allow_the_least_run_only():
    assert repeats_of([200, 201, 202, 203], [1, 2, 3, 4]).longest_by_chance_s == 4
