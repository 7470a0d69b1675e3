"""Battery hours, some of them censored."""

import numpy as np
import pytest
from scipy import stats

from spindlewise.bench.running_time import LogKind, Run, running_time, runs_from_log


def ended(*hours: float) -> list[Run]:
    return [Run(each, True) for each in hours]


def going(*hours: float) -> list[Run]:
    return [Run(each, False) for each in hours]


def test_still_running_is_a_lower_bound() -> None:
    found = running_time(going(40.0, 55.0, 12.0))
    assert (found.says, found.hours, found.interval, found.at_least_h) == ("at least", 55.0, None, 55.0)
    assert (found.ended, found.running) == (0, 3)


@pytest.mark.parametrize(
    ("runs", "hours", "longest"),
    [
        (ended(61.0), 61.0, 61.0),
        (ended(61.0, 65.0) + going(80.0), 63.0, 80.0),
        (ended(50.0, 50.0, 50.0), 50.0, 50.0),
    ],
)
def test_few_or_equal_runs_have_no_interval(runs: list[Run], hours: float, longest: float) -> None:
    found = running_time(runs)
    assert (found.says, found.hours, found.interval, found.at_least_h) == ("seen", hours, None, longest)


@pytest.mark.parametrize("hours", [(52.0, 61.0, 58.0), (40.0, 44.0, 41.0, 60.0, 52.0, 47.0)])
def test_without_censoring_it_is_the_t_interval_of_the_mean_log(hours: tuple[float, ...]) -> None:
    found = running_time(ended(*hours))
    logs = np.log(hours)
    exact = stats.t.interval(0.95, len(hours) - 1, logs.mean(), stats.sem(logs))
    assert found.says == "estimated"
    assert found.interval is not None
    assert found.hours == pytest.approx(np.exp(logs.mean()))
    assert (found.interval.low, found.interval.high) == pytest.approx(tuple(np.exp(exact)), rel=1e-6)


def test_runs_that_go_on_move_the_median_up_and_never_down() -> None:
    plain = running_time(ended(50.0, 55.0, 60.0, 52.0))
    short = running_time(ended(50.0, 55.0, 60.0, 52.0) + going(10.0))
    long = running_time(ended(50.0, 55.0, 60.0, 52.0) + going(64.0, 70.0))
    assert short.hours == pytest.approx(plain.hours, rel=1e-3)  # who stops at 10 h says nothing about 55
    assert long.hours > plain.hours + 3.0
    assert long.interval is not None
    assert long.interval.low < long.hours < long.interval.high


def test_the_fit_is_the_one_by_brute_force() -> None:
    runs = ended(50.0, 55.0, 60.0, 52.0, 71.0) + going(58.0, 64.0, 30.0)
    logs, censored = np.log([50.0, 55.0, 60.0, 52.0, 71.0]), np.log([58.0, 64.0, 30.0])
    middle, spread = np.meshgrid(np.linspace(3.9, 4.4, 501), np.linspace(0.05, 0.6, 551), indexing="ij")
    surface = sum(stats.norm.logpdf(log, middle, spread) for log in logs)
    surface = surface + sum(stats.norm.logsf(log, middle, spread) for log in censored)
    profile = surface.max(axis=1)
    inside = middle[:, 0][profile >= profile.max() - 2.5 * np.log1p(stats.t.ppf(0.975, 4) ** 2 / 4)]
    found = running_time(runs)
    assert found.interval is not None
    best = middle[np.unravel_index(surface.argmax(), surface.shape)]
    assert np.log(found.hours) == pytest.approx(best, abs=2e-3)
    assert np.log([found.interval.low, found.interval.high]) == pytest.approx(
        [inside[0], inside[-1]], abs=2e-3
    )


@pytest.mark.slow
def test_95_of_100_intervals_hold_the_true_median_though_many_runs_were_cut_short() -> None:
    rng = np.random.default_rng(61)
    held = 0
    for _ in range(100):
        true, looked_at = 60.0 * np.exp(0.15 * rng.standard_normal(12)), rng.uniform(40.0, 100.0, 12)
        runs = [Run(float(min(pair)), bool(pair[0] <= pair[1])) for pair in zip(true, looked_at, strict=True)]
        found = running_time(runs)
        assert found.interval is not None
        held += found.interval.holds(60.0)
    assert 91 <= held <= 99


def test_a_log_of_charges_and_cell_changes() -> None:
    lines: list[tuple[float, LogKind]] = [
        (3.0, "still running"),  # of unknown start
        (5.0, "empty"),  # likewise
        (5.0, "fresh"),
        (40.0, "still running"),
        (66.0, "empty"),
        (66.0, "fresh"),
        (66.0, "fresh"),
        (90.0, "fresh"),  # charged early
        (121.0, "still running"),
    ]
    assert runs_from_log(lines) == (Run(61.0, True), Run(24.0, False), Run(31.0, False))


def test_a_log_without_a_start_has_no_runs() -> None:
    assert runs_from_log([]) == ()
    assert runs_from_log([(4.0, "empty"), (9.0, "still running")]) == ()


@pytest.mark.parametrize(
    "lines", [[(5.0, "fresh"), (4.0, "empty")], [(5.0, "flat")], [(float("nan"), "fresh")]]
)
def test_a_log_that_makes_no_sense_is_refused(lines: list[tuple[float, LogKind]]) -> None:
    with pytest.raises(ValueError, match="the counter only rises"):
        runs_from_log(lines)


@pytest.mark.parametrize("hours", [0.0, -1.0, float("nan"), float("inf")])
def test_a_run_of_no_hours_is_refused(hours: float) -> None:
    with pytest.raises(ValueError, match="finite and above 0"):
        Run(hours, True)


def test_no_runs_have_no_running_time() -> None:
    with pytest.raises(ValueError, match="at least one"):
        running_time([])
