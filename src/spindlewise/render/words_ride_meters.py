"""Each recording, three meters without a truth, and the segments of a ride, in words."""

from spindlewise.answer.bench_quality import RecordingQuality
from spindlewise.answer.bench_ride import RideReport, SegmentReading
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.odd_one_out import OddOneOut
from spindlewise.bench.three_meters import ThreeMeters
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.units import number_text, seconds_text

LOST = {
    "none": "none",
    "dropouts": "{seconds} s",
    "cannot tell": "cannot tell",
}


def meter_blocks(report: RideReport) -> list[Block]:
    """The recordings with lag, drift, dropouts and held values; a sentence where no claim is made."""
    if not report.recordings:
        return []
    columns = (
        Column("Meter", is_name=True),
        Column("Rows", "right", spare=2),
        Column("Lag", "right"),
        Column("Drift", "right", spare=1),
        Column("Dropouts", "right"),
        Column("Held", "right"),
        Column("Pauses", "right", spare=3),
    )
    caption = f"Lag and drift against the clock of {report.reference}"
    table = Table(caption, columns, tuple(_row(each, report.reference) for each in report.recordings))
    said = [sentence for each in report.recordings for sentence in _remarks(each, report.reference)]
    said += [
        f"{name}: its file's clock puts it wholly before or after {report.reference}, so nothing of it is "
        "compared. Is it the same ride, and was that clock set?"
        for name in _strangers(report)
    ]
    if len(report.recordings) > 1 and report.aligned is not None and not report.aligned.starts_known:
        said.append(
            "The files state no starts that can be set against each other: each is taken to begin with its "
            "first row."
        )
    if len(report.recordings) > 1:
        said.append(
            "Powers are read off between rows, so that a lag below one second does no harm; that takes up to "
            "29 % off the noise of single readings, of all meters alike."
        )
    return [Heading("The recordings"), table, *([Bullets(tuple(said))] if said else [])]


def three_blocks(report: RideReport) -> list[Block]:
    """Three meters and more: scale and noise of each against all, and the odd one out; nobody is right."""
    if len(report.recordings) < 3:
        return []
    heading = Heading(f"{_count(len(report.recordings))} meters, no truth")
    three = report.three
    if three is None:
        told = "Too short, or the meters do not rise and fall together: they can't be told apart."
        return [heading, Paragraph(told)]
    columns = (
        Column("Meter", is_name=True),
        Column("Average", "right", spare=2),
        Column("Level", "right"),
        Column("Per watt", "right"),
        Column("Own noise", "right"),
    )
    rows = tuple(
        (
            meter.name,
            f"{number_text(meter.mean_w, 1)} W",
            _interval(meter.level, 3),
            _interval(meter.scale, 3),
            "too small to see" if meter.noise_unseen else f"{_interval(meter.noise_w, 1)} W",
        )
        for meter in three.meters
    )
    caption = f"Each against the consensus of all, over {three.count} seconds without leaps"
    return [heading, Table(caption, columns, rows), Bullets(odd_sentences(three))]


def odd_sentences(three: ThreeMeters) -> tuple[str, ...]:
    """The odd one out by level, by scale and by noise, or that they can't be told apart."""
    said = [
        _odd("By average level", three.by_level),
        _odd("By watts per watt", three.by_scale),
        _odd("By noise", three.by_noise),
        "The odd one out is not thereby the wrong one: two may err alike, and behind a chain less arrives.",
    ]
    return tuple(said)


def segment_blocks(report: RideReport) -> list[Block]:
    """The segments with each meter's mean, then the sprints."""
    if not report.segments:
        return []
    meters = [each.name for each in report.recordings]
    columns = (
        Column("Segment"),
        Column("From", "right"),
        Column("Length", "right", spare=1),
        *(Column(name, "right", is_name=True) for name in meters),
    )
    caption = "Averages over the seconds that all of them read"
    table = Table(caption, columns, tuple(_segment_row(each) for each in report.segments))
    left_out = tuple(
        f"Left out: {each.segment.name or each.segment.kind}, {each.segment.because}."
        for each in report.segments
        if each.segment.because
    )
    blocks: list[Block] = [Heading("Segments"), table]
    if left_out:
        blocks.append(Bullets(left_out))
    sprints = [each for each in report.segments if each.sprint]
    if sprints:
        blocks.append(_sprint_table(sprints))
    return blocks


def time_text(seconds: float) -> str:
    """Seconds of a ride as hours, minutes and seconds.

    >>> time_text(3725.4), time_text(-3.0)
    ('1:02:05', '-0:00:03')
    """
    whole = round(abs(seconds))
    sign = "-" if seconds < 0 and whole else ""
    return f"{sign}{whole // 3600}:{whole // 60 % 60:02d}:{whole % 60:02d}"


def _row(each: RecordingQuality, reference: str) -> tuple[str, ...]:
    lag = "reference" if each.name == reference else "not known"
    if each.name != reference and each.lag.lag_s is not None and each.lag.plus_minus_s is not None:
        lag = f"{number_text(each.lag.lag_s, 2, True)} ± {number_text(each.lag.plus_minus_s, 2)} s"
    drift = each.drift
    hour = None if drift is None else drift.over_an_hour_s
    moved = "" if each.name == reference else "not told"
    if drift is not None and hour is not None:
        moved = f"{number_text(hour, 1, True)} s/h" if drift.proved else "none seen"
    return (
        each.name,
        str(each.rows),
        lag,
        moved,
        LOST[each.dropouts.verdict].format(seconds=each.dropouts.dropout_s),
        f"{each.repeats.stuck_s} s" if each.repeats.stuck_s else "none",
        str(len(each.clock.pauses)),
    )


def _remarks(each: RecordingQuality, reference: str) -> list[str]:
    said = []
    if each.name != reference and not each.lag.known:
        said.append(
            f"{each.name}: no lag is claimed ({each.lag.because}); it stays where its own clock puts it."
        )
    if each.drift is not None and each.drift.because == "the clock jumps":
        said.append(f"{each.name}: its clock jumps within the ride.")
    if each.dropouts.untold_s:
        said.append(
            f"{each.name}: of {each.dropouts.untold_s} silent seconds nobody can tell whether power was lost."
        )
    if each.repeats.each_value_times > 1:
        said.append(f"{each.name}: gives each value {each.repeats.each_value_times} times as a rule.")
    return said


def _strangers(report: RideReport) -> list[str]:
    """The recordings that have not one second in common with the reference."""
    if report.aligned is None:
        return []
    written = report.aligned.written
    with_reference = written & written[report.aligned.row(report.reference)]
    return [name for name, row in zip(report.aligned.names, with_reference, strict=True) if not row.any()]


def _odd(by: str, found: OddOneOut) -> str:
    if found.odd is not None:
        return f"{by}: {found.odd} is the odd one out."
    if not found.any_told_apart:
        return f"{by}: they can't be told apart."
    apart = [f"{pair.first} from {pair.second}" for pair in found.pairs if pair.told_apart]
    return f"{by}: told apart are {' and '.join(apart)}, but none stands out."


def _segment_row(each: SegmentReading) -> tuple[str, ...]:
    segment = each.segment
    name = f"{segment.kind}: {segment.name}" if segment.name and segment.kind != "lap" else segment.name
    return (
        name or segment.kind,
        time_text(segment.start_s),
        time_text(segment.length_s),
        *("" if mean is None else f"{number_text(mean)} W" for mean in each.mean_w),
    )


def _sprint_table(sprints: list[SegmentReading]) -> Table:
    columns = (
        Column("Sprint at", "right"),
        Column("Meter", is_name=True),
        Column("Later by", "right"),
        Column("Best 1 s", "right"),
        Column("5 s", "right"),
        Column("15 s", "right"),
    )
    rows = tuple(
        (
            time_text(each.segment.start_s),
            reading.name,
            "" if reading.delay_s is None else seconds_text(reading.delay_s, signed=True),
            *("" if best is None else f"{number_text(best)} W" for best in reading.best_w),
        )
        for each in sprints
        for reading in each.sprint
    )
    return Table("Sprints, delays against the reference with the lag taken out", columns, rows)


def _interval(found: Estimate, decimals: int) -> str:
    return (
        f"{number_text(found.value, decimals)} ({number_text(found.low, decimals)} to "
        f"{number_text(found.high, decimals)})"
    )


def _count(number: int) -> str:
    return {3: "Three", 4: "Four", 5: "Five"}.get(number, str(number))
