"""Two meters in figures: averages, limits, by power, by cadence, line, best efforts, cadence."""

from spindlewise.answer.bench_pair import PairReport
from spindlewise.bench.agreement import Agreement
from spindlewise.bench.bands import Band
from spindlewise.bench.estimate import Estimate
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Table
from spindlewise.units import number_text, percent_text

BANDS = (
    Column("Seconds", "right", spare=2),
    Column("Difference", "right"),
    Column("In percent", "right"),
    Column("Between", "right", spare=1),
)


def pair_blocks(pair: PairReport) -> list[Block]:
    """The figures of one pair; nothing where fewer than twenty seconds are compared."""
    found = pair.power.with_zeros
    if found is None:
        return []
    percent = f"in percent of {pair.percent_of}"
    blocks: list[Block] = [
        Heading(f"{pair.first} less {pair.second}, {percent}"),
        _averages(pair),
        Bullets(tuple(_line_sentences(pair))),
    ]
    if pair.by_power:
        blocks.append(band_table("By power (mean of both readings), pedalling", "W", pair.by_power))
    if pair.by_cadence:
        blocks.append(band_table("By cadence, pedalling", "rpm", pair.by_cadence))
    if pair.best:
        blocks.append(_best_table(pair))
    return blocks


def _averages(pair: PairReport) -> Table:
    columns = (
        Column("Seconds counted"),
        Column(pair.first, "right", is_name=True),
        Column(pair.second, "right", is_name=True),
        Column("Difference", "right"),
        Column("In percent", "right"),
        Column("Limits of agreement", "right", spare=1),
    )
    rows = []
    for words, part in (("all", pair.power.with_zeros), ("pedalling", pair.power.without_zeros)):
        if part is not None:
            rows.append(
                (
                    f"{words}, {part.count}",
                    f"{number_text(part.mean_first, 1)} W",
                    f"{number_text(part.mean_second, 1)} W",
                    _watts(part.mean_difference),
                    "" if part.difference_pct is None else _pct(part.difference_pct),
                    f"{number_text(part.limits.lower.value, 0, True)} to "
                    f"{number_text(part.limits.upper.value, 0, True)} W",
                )
            )
    return Table("Averages", columns, tuple(rows))


def _line_sentences(pair: PairReport) -> list[str]:
    said = []
    slope = pair.power.without_zeros.slope if pair.power.without_zeros else None
    if slope is not None:
        moves = "changes with power" if slope.percent_changes else "is not seen to change with power"
        said.append(
            f"The difference in percent {moves}: {percent_text(slope.pct_at_low, signed=True)} at "
            f"{number_text(slope.at_low)} W, {percent_text(slope.pct_at_high, signed=True)} at "
            f"{number_text(slope.at_high)} W on the fitted line."
        )
    line = pair.deming
    if line is not None:
        said.append(
            f"Line through both, both with errors (Deming): {pair.second} = "
            f"{number_text(line.scale, 3)}{_between(line.scale_interval, 3)} times {pair.first} "
            f"{'plus' if line.offset >= 0 else 'less'} {number_text(abs(line.offset), 1)} W."
        )
    close = pair.concordance
    if close is not None:
        said.append(
            f"Concordance (Lin): {number_text(close.value, 4)}{_between(close.interval, 4)}; over a wide "
            "range of power it is near 1 for almost any two meters."
        )
    ratio = pair.power.without_zeros.ratio if pair.power.without_zeros else None
    if ratio is not None:
        said.append(
            f"Ratio of single seconds: {number_text(ratio.ratio.value, 3)}, 19 in 20 between "
            f"{number_text(ratio.lower.value, 3)} and {number_text(ratio.upper.value, 3)}."
        )
    return [*said, _cadence_sentence(pair.cadence)]


def _cadence_sentence(found: Agreement | None) -> str:
    if found is None:
        return "Cadence, apart from power: not recorded by both."
    return (
        f"Cadence, apart from power: {number_text(found.mean_difference.value, 1, True)} rpm on average "
        f"(between {number_text(found.mean_difference.low, 1, True)} and "
        f"{number_text(found.mean_difference.high, 1, True)}), 19 of 20 seconds between "
        f"{number_text(found.limits.lower.value, 1, True)} and "
        f"{number_text(found.limits.upper.value, 1, True)} rpm."
    )


def band_table(caption: str, unit: str, bands: tuple[Band, ...]) -> Table:
    """The bands of which anything is claimed, each with its interval; `unit` is that of their ends."""
    rows = []
    for band in bands:
        if band.mean_difference is None or band.difference_pct is None:
            continue
        rows.append(
            (
                f"{number_text(band.low)} to {number_text(band.high)} {unit}",
                str(band.count),
                _watts(band.mean_difference),
                percent_text(band.difference_pct.value, signed=True),
                f"{percent_text(band.difference_pct.low, signed=True)} and "
                f"{percent_text(band.difference_pct.high, signed=True)}",
            )
        )
    return Table(caption, (Column("Band"), *BANDS), tuple(rows))


def _best_table(pair: PairReport) -> Table:
    columns = (
        Column("Best over", "right"),
        Column(pair.first, "right", is_name=True),
        Column(pair.second, "right", is_name=True),
        Column(f"Of {pair.second}", "right"),
        Column("Effort", spare=1),
    )
    rows = tuple(
        (
            _duration(best.duration_s),
            f"{number_text(best.first_w)} W",
            f"{number_text(best.second_w)} W",
            percent_text(best.difference.pct, signed=True),
            "the same" if best.same_effort else "two efforts",
        )
        for best in pair.best
    )
    return Table("Best averages", columns, rows)


def _duration(seconds: int) -> str:
    return f"{seconds // 60} min" if seconds >= 60 else f"{seconds} s"


def _watts(found: Estimate) -> str:
    return f"{number_text(found.value, 1, True)} W"


def _pct(found: Estimate) -> str:
    return (
        f"{percent_text(found.value, signed=True)} ({number_text(found.low, 1, True)} to "
        f"{number_text(found.high, 1, True)})"
    )


def _between(interval: Estimate | None, decimals: int) -> str:
    if interval is None:
        return ""
    return f" ({number_text(interval.low, decimals)} to {number_text(interval.high, decimals)})"
