"""Three meters, no truth."""

import numpy as np
import pytest

from bench.meters import autoregressive, stepped_power
from spindlewise.bench.three_meters import ThreeMeters, three_meters

NAMES = ("pedals", "hub", "trainer")


def ridden(
    scale: tuple[float, ...], offset_w: tuple[float, ...], noise_w: tuple[float, ...], seed: int = 48
) -> np.ndarray:
    rng, power = np.random.default_rng(seed), stepped_power(3600)
    return np.array(
        [
            b * power + o + autoregressive(rng, 1, 3600, 0.8, sd)[0]
            for b, o, sd in zip(scale, offset_w, noise_w, strict=True)
        ]
    )


def found(series: np.ndarray, **options: object) -> ThreeMeters:
    result = three_meters(series, NAMES[: len(series)], **options)  # type: ignore[arg-type]
    assert result is not None
    return result


def test_a_meter_that_reads_low_is_the_odd_one_out_and_no_meter_is_called_right() -> None:
    told = found(ridden((1.0, 1.0, 0.96), (0.0, 0.0, 0.0), (4.0, 4.0, 4.0)))
    assert (told.by_level.odd, told.by_scale.odd, told.by_noise.odd) == ("trainer", "trainer", None)
    assert told.meters[2].scale.value == pytest.approx(0.96 / 0.96 ** (1 / 3), abs=0.01)
    assert np.prod([meter.scale.value for meter in told.meters]) == pytest.approx(1.0)
    assert np.prod([meter.level.value for meter in told.meters]) == pytest.approx(1.0)


def test_a_noisy_meter_is_found_by_its_own_noise() -> None:
    told = found(ridden((1.0, 1.0, 1.0), (0.0, 0.0, 0.0), (3.0, 3.0, 12.0)))
    assert (told.by_level.odd, told.by_scale.odd, told.by_noise.odd) == (None, None, "trainer")
    for meter, true in zip(told.meters, (3.0, 3.0, 12.0), strict=True):
        assert meter.noise_w.holds(true)
        assert not meter.noise_unseen


def test_an_offset_shows_in_the_level_and_not_in_the_scale() -> None:
    told = found(ridden((1.0, 1.0, 1.0), (0.0, 0.0, -9.0), (3.0, 3.0, 3.0)))
    assert (told.by_level.odd, told.by_scale.odd) == ("trainer", None)
    assert told.meters[2].offset_w.holds(-6.0)  # of the consensus, which lies 3 W lower for it


def test_three_alike_cannot_be_told_apart() -> None:
    told = found(ridden((1.0, 1.0, 1.0), (0.0, 0.0, 0.0), (4.0, 4.0, 4.0)))
    assert not told.by_level.any_told_apart
    assert not told.by_scale.any_told_apart
    assert not told.by_noise.any_told_apart


def test_unlike_scales_pass_for_noise_with_grubbs_and_not_with_the_consensus() -> None:
    told = found(ridden((1.0, 1.0, 0.9), (0.0, 0.0, 0.0), (3.0, 3.0, 3.0)))
    assert told.meters[2].grubbs_w2.value > 30.0
    assert told.meters[2].noise_w.holds(3.0)


def test_a_flawless_meter_has_noise_that_cannot_be_seen() -> None:
    unseen = []
    for seed in range(6):
        told = found(ridden((1.0, 1.0, 1.0), (0.0, 0.0, 0.0), (0.0, 6.0, 6.0), seed))
        first = told.meters[0]
        assert first.noise_unseen == (first.noise_w.value == 0.0)
        assert first.noise_w.value < 1.5
        unseen.append(first.noise_unseen)
    assert set(unseen) == {True, False}


def test_the_same_ride_gives_the_same_figures_and_another_seed_nearly_the_same() -> None:
    series = ridden((1.0, 1.02, 0.97), (0.0, 0.0, 0.0), (3.0, 4.0, 5.0))
    once, again, other = found(series), found(series), found(series, seed=7)
    assert once == again
    assert other.meters[0].scale.high == pytest.approx(once.meters[0].scale.high, abs=0.002)
    assert (once.seed, other.seed) == (1948, 7)


def test_only_seconds_in_which_all_read_count() -> None:
    series = ridden((1.0, 1.0, 1.0), (0.0, 0.0, 0.0), (3.0, 3.0, 3.0))
    series[0, :100] = series[1, 50:200] = np.nan
    assert found(series).count == 3400


def test_nothing_is_told_where_nothing_can_be() -> None:
    rng = np.random.default_rng(49)
    assert three_meters(200.0 + rng.standard_normal((3, 100)).cumsum(axis=1), NAMES) is None  # too short
    assert three_meters(200.0 + rng.standard_normal((3, 2000)), NAMES) is None  # one power: nothing rises
    assert three_meters(ridden((1.0, 1.0, 1.0), (-400.0, 0.0, 0.0), (3.0, 3.0, 3.0)), NAMES) is None


def test_a_signal_that_most_draws_lose_tells_nothing() -> None:
    """Together over the whole ride only by one surge, which a draw may miss."""
    series = 200.0 + 5.0 * np.random.default_rng(51).standard_normal((3, 1000))
    series[:, 500:505] += 60.0
    assert three_meters(series, NAMES) is None


@pytest.mark.parametrize(
    ("shape", "names", "draws", "says"),
    [
        ((2, 50), NAMES[:2], 400, "each with its own name"),
        ((3, 50), NAMES[:2], 400, "each with its own name"),
        ((3, 50), ("a", "a", "b"), 400, "each with its own name"),
        ((50,), NAMES, 400, "each with its own name"),
        ((3, 50), NAMES, 100, "at least 200"),
    ],
)
def test_a_wrong_call_is_refused(
    shape: tuple[int, ...], names: tuple[str, ...], draws: int, says: str
) -> None:
    with pytest.raises(ValueError, match=says):
        three_meters(np.ones(shape), names, draws=draws)


def test_four_meters_count_by_all_their_pairs() -> None:
    series = ridden((1.0, 1.0, 1.0, 1.05), (0.0,) * 4, (3.0,) * 4)
    told = three_meters(series, ("a", "b", "c", "d"))
    assert told is not None
    assert told.by_scale.odd == "d"
    assert len(told.by_scale.pairs) == 6


@pytest.mark.slow
def test_95_of_100_intervals_hold_the_truth() -> None:
    power, rng = stepped_power(1800), np.random.default_rng(52)
    scale, noise = np.array([1.0, 1.02, 0.97]), (3.0, 4.0, 6.0)
    rides = [autoregressive(rng, 400, 1800, 0.7, sd) for sd in noise]
    held_scale, held_noise, held_level = [], [], []
    true_level = scale / np.prod(scale) ** (1 / 3)
    for ride in range(400):
        told = found(
            np.array([b * power + errors[ride] for b, errors in zip(scale, rides, strict=True)]), draws=400
        )
        held_scale += [m.scale.holds(b) for m, b in zip(told.meters, true_level, strict=True)]
        held_level += [m.level.holds(b) for m, b in zip(told.meters, true_level, strict=True)]
        held_noise += [m.noise_w.holds(sd) for m, sd in zip(told.meters, noise, strict=True)]
    for held in (held_scale, held_noise, held_level):
        assert 0.93 <= sum(held) / 1200 <= 0.97


@pytest.mark.parametrize(("signal_w", "told"), [(0.8, False), (1.0, True), (1.2, True)])
def test_a_few_draws_without_a_common_signal_do_no_harm(signal_w: float, told: bool) -> None:
    """A rider who varies by a watt beneath three watts of noise: 443, 77 and 3 of 2,000 draws are lost."""
    rng = np.random.default_rng(55)
    series = 200.0 + signal_w * rng.standard_normal(600) + 3.0 * rng.standard_normal((3, 600))
    assert (three_meters(series, NAMES) is not None) is told
