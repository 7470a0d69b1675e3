"""A ride of several meters as JSON: figures with their intervals, and what each is a percentage of."""

import math

from spindlewise.answer.bench_pair import PairReport
from spindlewise.answer.bench_quality import RecordingQuality
from spindlewise.answer.bench_ride import RideReport, SegmentReading
from spindlewise.answer.bench_session import NoSession, ProductSessions, RideSession
from spindlewise.bench.agreement import Agreement
from spindlewise.bench.bands import Band
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.odd_one_out import OddOneOut
from spindlewise.bench.proportional_bias import ProportionalBias
from spindlewise.bench.three_meters import ThreeMeters
from spindlewise.bench.verdicts import Verdict
from spindlewise.render.as_json import Json, number
from spindlewise.render.json_session import sessions_json

SCHEMA = "spindlewise bench ride 1"


def ride_json(
    report: RideReport,
    sessions: tuple[RideSession | NoSession, ...],
    records: tuple[ProductSessions, ...],
) -> dict[str, Json]:
    """The whole report without its schema key; what cannot be said is null."""
    sheet = report.sheet
    return {
        "id": sheet.id,
        "date": sheet.date.isoformat(),
        "made": sheet.made,
        "counts": report.void is None,
        "counts_because": report.void,
        "percent_of": sheet.percent_of,
        "clock_of": report.reference or None,
        "unread": list(report.unread),
        "problems": len(report.problems),
        "not_noted": list(report.not_noted),
        "recordings": [_recording(each) for each in report.recordings],
        "pairs": [_pair(pair) for pair in report.pairs],
        "three_meters": None if report.three is None else _three(report.three),
        "segments": [_segment(each, report) for each in report.segments],
        "sessions": sessions_json(sessions, records),
    }


def estimate_json(found: Estimate | None) -> Json:
    """A figure with its interval; null for none."""
    if found is None or not math.isfinite(found.value):
        return None
    return {"value": number(found.value), "low": _finite(found.low), "high": _finite(found.high)}


def _finite(value: float) -> float | None:
    return number(value) if math.isfinite(value) else None


def _recording(each: RecordingQuality) -> dict[str, Json]:
    drift = each.drift
    silences: list[Json] = [
        {
            "start_s": number(silence.start_s),
            "length_s": silence.length_s,
            "kind": silence.kind,
            "because": silence.because,
        }
        for silence in each.dropouts.silences
    ]
    held: list[Json] = [
        {"start_s": number(run.start_s), "length_s": run.length_s, "stuck": run.stuck}
        for run in each.repeats.runs
    ]
    return {
        "meter": each.name,
        "file": each.source,
        "sha256": each.sha256,
        "rows": each.rows,
        "duration_s": number(each.duration_s),
        "lag_s": number(each.lag.lag_s),
        "lag_plus_minus_s": number(each.lag.plus_minus_s),
        "lag_because": each.lag.because or None,
        "drift_ppm": None if drift is None else number(drift.ppm),
        "drift_proved": drift is not None and drift.proved,
        "dropouts": each.dropouts.verdict,
        "dropout_s": each.dropouts.dropout_s,
        "untold_s": each.dropouts.untold_s,
        "lost_pct": number(each.dropouts.lost_pct),
        "silences": silences,
        "held_s": each.repeats.stuck_s,
        "held": held,
        "pauses": [[number(begin), number(end)] for begin, end in each.clock.pauses],
    }


def _pair(pair: PairReport) -> dict[str, Json]:
    loss, line, close = pair.loss, pair.deming, pair.concordance
    best: list[Json] = [
        {
            "duration_s": each.duration_s,
            "first_w": number(each.first_w),
            "second_w": number(each.second_w),
            "difference_pct": number(each.difference.pct),
            "percent_of": each.difference.percent_of,
            "same_effort": each.same_effort,
        }
        for each in pair.best
    ]
    return {
        "first": pair.first,
        "second": pair.second,
        "percent_of": pair.percent_of,
        "with_zeros": _agreement(pair.power.with_zeros),
        "without_zeros": _agreement(pair.power.without_zeros),
        "by_power_w": [_band(band) for band in pair.by_power],
        "by_cadence_rpm": [_band(band) for band in pair.by_cadence],
        "concordance": None
        if close is None
        else {"value": number(close.value), "interval": estimate_json(close.interval)},
        "deming": None
        if line is None
        else {
            "scale": number(line.scale),
            "offset_w": number(line.offset),
            "scale_interval": estimate_json(line.scale_interval),
            "offset_interval_w": estimate_json(line.offset_interval),
        },
        "best_averages": best,
        "cadence": _agreement(pair.cadence),
        "chain_between": pair.chain,
        "loss": None
        if loss is None
        else {
            "e_n": number(loss.e_n),
            "seen_pct": estimate_json(loss.seen),
            "expected_pct": estimate_json(loss.expected),
            "equal_averages": loss.equal_averages,
            "could_tell_no_loss": loss.could_tell_no_loss,
        },
        "loss_because": pair.loss_because or None,
        "verdicts": [_verdict(verdict) for verdict in pair.verdicts],
    }


def _agreement(found: Agreement | None) -> Json:
    if found is None:
        return None
    slope = found.slope
    return {
        "seconds": found.count,
        "mean_first": number(found.mean_first),
        "mean_second": number(found.mean_second),
        "mean_difference": estimate_json(found.mean_difference),
        "difference_pct": estimate_json(found.difference_pct),
        "sd": number(found.limits.sd),
        "lower_limit": estimate_json(found.limits.lower),
        "upper_limit": estimate_json(found.limits.upper),
        "effective_readings": number(found.limits.effective),
        "slope": None if slope is None else estimate_json(slope.slope),
        "percent_changes_with_power": None if slope is None else slope.percent_changes,
        "fitted": None if slope is None else _fitted(slope),
        "ratio": None if found.ratio is None else estimate_json(found.ratio.ratio),
    }


def _fitted(slope: ProportionalBias) -> Json:
    """The fitted difference at low and at high power; in percent of no power it is none."""
    return [
        {
            "power": number(at),
            "difference": number(difference),
            "difference_pct": number(pct) if math.isfinite(pct) else None,
        }
        for at, difference, pct in (
            (slope.at_low, slope.difference_at_low, slope.pct_at_low),
            (slope.at_high, slope.difference_at_high, slope.pct_at_high),
        )
    ]


def _band(band: Band) -> Json:
    return {
        "low": number(band.low),
        "high": number(band.high),
        "seconds": band.count,
        "mean_difference_w": estimate_json(band.mean_difference),
        "difference_pct": estimate_json(band.difference_pct),
        "sd_w": number(band.sd),
    }


def _verdict(verdict: Verdict) -> Json:
    numbers: list[Json] = [
        {
            "name": each.name,
            "value": _finite(each.value),
            "unit": each.unit,
            "low": None if each.low is None else _finite(each.low),
            "high": None if each.high is None else _finite(each.high),
        }
        for each in verdict.numbers
    ]
    return {
        "subject": verdict.subject,
        "says": verdict.says,
        "because": list(verdict.because),
        "numbers": numbers,
    }


def _three(three: ThreeMeters) -> Json:
    meters: list[Json] = [
        {
            "meter": meter.name,
            "mean_w": number(meter.mean_w),
            "level": estimate_json(meter.level),
            "scale": estimate_json(meter.scale),
            "offset_w": estimate_json(meter.offset_w),
            "noise_w": estimate_json(meter.noise_w),
            "noise_unseen": meter.noise_unseen,
        }
        for meter in three.meters
    ]
    return {
        "seconds": three.count,
        "meters": meters,
        "odd_one_out": {
            "by_level": _odd(three.by_level),
            "by_scale": _odd(three.by_scale),
            "by_noise": _odd(three.by_noise),
        },
    }


def _odd(found: OddOneOut) -> Json:
    return {
        "odd": found.odd,
        "told_apart": [[pair.first, pair.second] for pair in found.pairs if pair.told_apart],
    }


def _segment(each: SegmentReading, report: RideReport) -> Json:
    segment = each.segment
    names = [recording.name for recording in report.recordings]
    sprint: list[Json] = [
        {
            "meter": reading.name,
            "delay_s": number(reading.delay_s),
            "best_1_s_w": number(reading.best_w[0]),
            "best_5_s_w": number(reading.best_w[1]),
            "best_15_s_w": number(reading.best_w[2]),
        }
        for reading in each.sprint
    ]
    return {
        "kind": segment.kind,
        "name": segment.name or None,
        "start_s": number(segment.start_s),
        "end_s": number(segment.end_s),
        "found": segment.found,
        "because": segment.because or None,
        "mean_w": {name: number(mean) for name, mean in zip(names, each.mean_w, strict=True)},
        "sprint": sprint,
    }
