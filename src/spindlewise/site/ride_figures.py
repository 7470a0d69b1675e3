"""The pictures of a ride: recordings over each other, what is between them, by power, close up."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from spindlewise.answer.bench_pair import PairReport
from spindlewise.answer.bench_ride import RideReport, SegmentReading
from spindlewise.bench.agreement import Agreement
from spindlewise.bench.alignment import Aligned
from spindlewise.bench.segments import LEFT_OUT
from spindlewise.render.blocks import Column, Table
from spindlewise.render.naming import listed
from spindlewise.render.words_ride_meters import time_text
from spindlewise.render.words_ride_pair import band_table
from spindlewise.site.chart_bands import bands_chart, bands_shown
from spindlewise.site.chart_limits import LimitsShown, limits_chart, limits_shown
from spindlewise.site.chart_traces import WIDTH, Traces, traces_chart
from spindlewise.site.figured import Figured
from spindlewise.site.picture import Picture
from spindlewise.site.ride_traces import Blocks, blocks, ends, stepped, trace
from spindlewise.units import number_text, percent_text

FloatArray = npt.NDArray[np.float64]

BLOCK_S, MOST_BLOCKS, MOST_ROWS = 30, 240, 60
"""Design choice, no source: half a minute takes the leaps out of a difference."""
MOST_SPRINTS, MOST_PARTS = 6, 12
SPRINT_ROOM_S = 10
PARTS = ("climb", "over-under", "intervals", "steady")
"""The kinds of segment that are shown close up, in this order where there are too many of them."""


def overlay(report: RideReport, aligned: Aligned) -> Figured:
    """The whole ride, each meter's line over the others."""
    names = listed(aligned.names)
    shown = _traces(aligned, aligned.power_w, slice(None), "Power, W", 320)
    means = blocks(aligned.seconds, report.comparable_w, 60, MOST_ROWS)
    said = (
        f"{time_text(len(aligned.seconds))} of {names} on one clock. "
        f"{_segments_said(report)} The highest second is {number_text(shown.high / 1.05)} W."
    )
    caption = (
        f"The clocks are laid over that of {aligned.reference}. For each pixel the least and the most of its "
        "seconds are drawn, so that a single lost second can be seen."
    )
    columns = (Column("From", "right"), *(Column(name, "right", is_name=True) for name in aligned.names))
    rows = tuple(
        (time_text(start), *(_watts(row[at]) for row in means.means))
        for at, start in enumerate(means.starts_s)
    )
    table = Table(f"Averages over {time_text(means.length_s)} each, of what is compared", columns, rows)
    return Figured(Picture("overlay", "The whole ride", said, traces_chart, shown), caption, table)


def residual(report: RideReport, aligned: Aligned) -> tuple[Figured, ...]:
    """What each meter reads more than the reference, half minute by half minute; none for one meter."""
    others = [name for name in aligned.names if name != aligned.reference]
    if not others:
        return ()
    reference = report.comparable_w[aligned.row(aligned.reference)]
    rows = np.array([report.comparable_w[aligned.row(name)] - reference for name in others])
    drawn = blocks(aligned.seconds, rows, BLOCK_S, MOST_BLOCKS)
    lines = tuple(stepped(name, drawn, row) for row, name in enumerate(others))
    low, high = ends(lines)
    room = 0.08 * (high - low or 1.0)
    shown = Traces(
        aligned.names,
        lines,
        float(aligned.seconds[0]),
        float(aligned.seconds[-1]),
        round(min(low, 0.0) - room, 1),
        round(max(high, 0.0) + room, 1),
        f"Less {aligned.reference}, W",
        220,
    )
    said = " ".join(
        _range_said(name, aligned.reference, row) for name, row in zip(others, drawn.means, strict=True)
    )
    caption = (
        f"Each point is the mean over {drawn.length_s} seconds of what a meter reads more than "
        f"{aligned.reference}. A line that leans shows a reading that wanders off as the ride goes on; a "
        "chain takes its part all along."
    )
    table = _residual_table(others, aligned, rows)
    return (Figured(Picture("residual", "Difference over time", said, traces_chart, shown), caption, table),)


def pair_figures(report: RideReport, aligned: Aligned, number: int, pair: PairReport) -> tuple[Figured, ...]:
    """Difference against mean, and by power; nothing where too little is compared."""
    found = pair.power.without_zeros
    if found is None:
        return ()
    names = (pair.first, pair.second)
    one, two = (report.comparable_w[aligned.row(name)] for name in names)
    turning = (one > 0) & (two > 0)
    one, two = (np.where(turning, row, np.nan) for row in (one, two))
    shown = limits_shown(names, one, two, found.limits, found.slope)
    figures = [_limits(number, pair, found, shown)]
    if pair.by_power:
        figures.append(_bands(number, pair))
    return tuple(figures)


def sprints(report: RideReport, aligned: Aligned) -> tuple[Figured, ...]:
    """Each sprint second by second, the strongest of them where there are many, in the order of the ride."""
    every = [each for each in report.segments if each.sprint]
    best = sorted(every, key=lambda each: -max(r.best_w[0] or 0.0 for r in each.sprint))[:MOST_SPRINTS]
    return tuple(
        _sprint(number, each, report, aligned)
        for number, each in enumerate(sorted(best, key=lambda each: each.segment.start_s), 1)
    )


def parts(report: RideReport, aligned: Aligned) -> tuple[tuple[str, Figured], ...]:
    """The found and named segments close up, each with the words that open it."""
    wanted = [s for s in report.segments if s.segment.kind in PARTS]
    first = sorted(wanted, key=lambda s: (PARTS.index(s.segment.kind), -s.segment.length_s))[:MOST_PARTS]
    ordered = sorted(first, key=lambda s: (s.segment.start_s, s.segment.kind))
    return tuple(
        (_part_words(each), _part(number, each, report, aligned)) for number, each in enumerate(ordered, 1)
    )


def _traces(
    aligned: Aligned, power_w: FloatArray, part: slice, title: str, height: int, dotted: bool = False
) -> Traces:
    seconds = aligned.seconds[part]
    lines = tuple(
        trace(name, seconds, row[part], WIDTH) for name, row in zip(aligned.names, power_w, strict=True)
    )
    low, high = ends(lines)
    bottom = 0.0 if low < 0.5 * high else round(low - 0.08 * (high - low), 1)
    return Traces(
        aligned.names,
        lines,
        float(seconds[0]),
        float(seconds[-1]),
        bottom,
        round(high * 1.05, 1) or 1.0,
        title,
        height,
        dotted,
    )


def _segments_said(report: RideReport) -> str:
    kinds = [each.segment.kind for each in report.segments if each.segment.kind not in ("lap", *LEFT_OUT)]
    counts = [f"{kinds.count(kind)} {kind}" for kind in dict.fromkeys(kinds)]
    return f"Found in it: {listed(counts)}." if counts else "No segment stands out."


def _range_said(name: str, reference: str, means: Sequence[float]) -> str:
    known = [mean for mean in means if np.isfinite(mean)]
    if not known:
        return f"{name} and {reference} share no half minute."
    return (
        f"{name} less {reference}: between {number_text(min(known), 1, True)} W and "
        f"{number_text(max(known), 1, True)} W."
    )


def _residual_table(others: Sequence[str], aligned: Aligned, rows: FloatArray) -> Table:
    means: Blocks = blocks(aligned.seconds, rows, 60, MOST_ROWS)
    columns = (Column("From", "right"), *(Column(name, "right", is_name=True) for name in others))
    cells = tuple(
        (time_text(start), *(_watts(row[at], signed=True) for row in means.means))
        for at, start in enumerate(means.starts_s)
    )
    return Table(f"Less {aligned.reference}, averages over {time_text(means.length_s)} each", columns, cells)


def _limits(number: int, pair: PairReport, found: Agreement, shown: LimitsShown) -> Figured:
    limits = found.limits
    beyond = sum(cell.count for cell in shown.cells if cell.beyond)
    more = f" {beyond} seconds lie beyond the picture, drawn at its edge." if beyond else ""
    if shown.slope and found.slope is not None:
        slope = found.slope
        more += (
            " The long-dashed line shows that the difference changes with power: "
            f"{percent_text(slope.pct_at_low, signed=True)} at {number_text(slope.at_low)} W, "
            f"{percent_text(slope.pct_at_high, signed=True)} at {number_text(slope.at_high)} W."
        )
    said = (
        f"{pair.first} less {pair.second} against the mean of both, {found.count} seconds in which both read "
        f"above zero. The mean difference is {number_text(limits.mean.value, 1, True)} W, the limits of "
        f"agreement are {number_text(limits.lower.value, 1, True)} W and "
        f"{number_text(limits.upper.value, 1, True)} W.{more}"
    )
    caption = (
        "Each disc stands for the seconds about it; the larger, the more. Between the broken lines lie 19 of "
        "20 seconds (Bland and Altman 1986); the bands about the lines are their confidence intervals, with "
        f"neighbouring seconds that resemble each other taken into account.{more}"
    )
    title = f"{pair.first} less {pair.second}, against the mean of both"
    table = Table(
        "Mean difference and limits of agreement, pedalling",
        (Column("What"), Column("Watts", "right"), Column("Between", "right")),
        tuple(
            (what, f"{number_text(each.value, 1, True)} W", _between(each.low, each.high))
            for what, each in (
                ("mean difference", limits.mean),
                ("lower limit", limits.lower),
                ("upper limit", limits.upper),
            )
        ),
    )
    return Figured(Picture(f"limits-{number}", title, said, limits_chart, shown), caption, table)


def _bands(number: int, pair: PairReport) -> Figured:
    reach = next((n.value for n in pair.verdicts[0].numbers if n.name == "both tolerances together"), 0.0)
    shown = bands_shown((pair.first, pair.second), pair.by_power, reach)
    pcts = [band.pct for band in shown.bands]
    said = (
        f"{pair.first} less {pair.second} in percent of {pair.percent_of}, in {len(pcts)} bands of power: "
        f"between {percent_text(min(pcts), signed=True)} and {percent_text(max(pcts), signed=True)}."
    )
    allowed = (
        f" The shaded band is the ±{percent_text(reach)} that both tolerances allow together."
        if reach
        else ""
    )
    caption = (
        f"In percent of {pair.percent_of}. Each bar is a band of power with the mean difference in it, the "
        f"upright line its confidence interval.{allowed} Bands of less than a minute are left out."
    )
    title = f"{pair.first} less {pair.second}, by power"
    table = band_table("By power (mean of both readings), pedalling", "W", pair.by_power)
    return Figured(Picture(f"bands-{number}", title, said, bands_chart, shown), caption, table)


def _sprint(number: int, each: SegmentReading, report: RideReport, aligned: Aligned) -> Figured:
    start, end = each.segment.start_s - SPRINT_ROOM_S, each.segment.end_s + SPRINT_ROOM_S
    part = _slice(aligned, start, end)
    shown = _traces(aligned, report.comparable_w, part, "Power, W", 260, dotted=True)
    best = listed(f"{r.name} {number_text(r.best_w[0])} W" for r in each.sprint if r.best_w[0] is not None)
    said = f"The sprint at {time_text(each.segment.start_s)}, second by second. Best second: {best}."
    seconds = aligned.seconds[part]
    columns = (Column("At", "right"), *(Column(name, "right", is_name=True) for name in aligned.names))
    rows = tuple(
        (time_text(second), *(_watts(row[part][at]) for row in report.comparable_w))
        for at, second in enumerate(seconds)
    )
    title = f"Sprint at {time_text(each.segment.start_s)}"
    caption = (
        "Every second is a point. What is left of a delay here, with the lag taken out, is the meter’s own."
    )
    return Figured(
        Picture(f"sprint-{number}", title, said, traces_chart, shown),
        caption,
        Table(f"{title}, each second", columns, rows),
    )


def _part_words(each: SegmentReading) -> str:
    segment = each.segment
    name = f"{segment.kind}, {segment.name}" if segment.name else segment.kind
    return f"{name[0].upper()}{name[1:]} at {time_text(segment.start_s)}, {time_text(segment.length_s)} long"


def _part(number: int, each: SegmentReading, report: RideReport, aligned: Aligned) -> Figured:
    segment = each.segment
    part = _slice(aligned, segment.start_s, segment.end_s)
    shown = _traces(aligned, report.comparable_w, part, "Power, W", 240)
    means = [(name, mean) for name, mean in zip(aligned.names, each.mean_w, strict=True) if mean is not None]
    told = listed(f"{name} {number_text(mean)} W" for name, mean in means) or "not told"
    title = _part_words(each)
    rows = tuple((name, f"{number_text(mean, 1)} W") for name, mean in means)
    table = Table(
        "Averages over the seconds that all of them read", (Column("Meter"), Column("Average", "right")), rows
    )
    return Figured(
        Picture(f"part-{number}", title, f"{title}. Averages: {told}.", traces_chart, shown),
        f"Averages: {told}.",
        table,
    )


def _slice(aligned: Aligned, start_s: float, end_s: float) -> slice:
    low, high = np.searchsorted(aligned.seconds, (start_s, end_s))
    return slice(int(low), max(int(high), int(low) + 2))


def _watts(value: float, signed: bool = False) -> str:
    return f"{number_text(value, 1 if signed else 0, signed)} W" if np.isfinite(value) else ""


def _between(low: float, high: float) -> str:
    return f"{number_text(low, 1, True)} and {number_text(high, 1, True)} W"
