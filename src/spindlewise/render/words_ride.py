"""A ride of several meters in words: three verdicts kept apart, and the figures behind them."""

from pathlib import PurePosixPath

from spindlewise.answer.bench_noted import thing_at
from spindlewise.answer.bench_ride import RideReport
from spindlewise.answer.bench_session import NoSession, ProductSessions, RideSession
from spindlewise.catalog.catalog import Catalog
from spindlewise.problems import shown
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph, Section, blocks_of
from spindlewise.render.naming import Naming, listed, naming
from spindlewise.render.words_ride_meters import meter_blocks, segment_blocks, three_blocks
from spindlewise.render.words_ride_pair import pair_blocks
from spindlewise.render.words_ride_verdict import verdict_sentences
from spindlewise.render.words_session import session_sentences
from spindlewise.units import date_text

NOTHING_SCORED = (
    "Nothing is scored from one ride. What is said holds for the units that were ridden on that day; another "
    "unit of the same product may differ."
)


def ride_blocks(
    catalog: Catalog,
    report: RideReport,
    sessions: tuple[RideSession | NoSession, ...],
    records: tuple[ProductSessions, ...],
) -> tuple[Block, ...]:
    """The whole report. `records` are the sessions of each product with this ride's own among them."""
    return blocks_of(ride_sections(catalog, report, sessions, records))


def ride_sections(
    catalog: Catalog,
    report: RideReport,
    sessions: tuple[RideSession | NoSession, ...],
    records: tuple[ProductSessions, ...],
) -> tuple[Section, ...]:
    """The report in parts: head, short, recordings, pair-1 and on, three, segments, noted, product.

    A part that has nothing to say is left out.
    """
    names = naming(catalog)
    if report.pairs:
        short: list[Block] = [Heading("In short")]
        short += [Bullets(verdict_sentences(pair)) for pair in report.pairs]
    else:
        short = [Paragraph("There are not two recordings to compare.", "important")]
    noted: list[Block] = [Heading("What nobody noted"), Bullets(not_noted_sentences(report))]
    product: list[Block] = [Heading("What this says of a product"), Paragraph(NOTHING_SCORED)]
    said = session_sentences(sessions, records, names)
    parts: list[tuple[str, list[Block]]] = [
        ("head", _head(report, names)),
        ("short", short),
        ("recordings", meter_blocks(report)),
        *((f"pair-{number}", pair_blocks(pair)) for number, pair in enumerate(report.pairs, 1)),
        ("three", three_blocks(report)),
        ("segments", segment_blocks(report)),
        ("noted", noted if report.not_noted else []),
        ("product", [*product, Bullets(said)] if said else product),
    ]
    return tuple(Section(name, tuple(blocks)) for name, blocks in parts if blocks)


def not_noted_sentences(report: RideReport) -> tuple[str, ...]:
    """What the sheet lacks, a sentence for the ride and one a meter; digests that it lacks are given."""
    by_meter: dict[str, list[str]] = {}
    for path in report.not_noted:
        about, thing = thing_at(path)
        by_meter.setdefault(about, []).append(thing)
    said = [f"Of {about or 'the ride'}: {listed(things)}." for about, things in by_meter.items()]
    digests = [
        f"The SHA-256 of {PurePosixPath(each.source).name} is {each.sha256}."
        for each in report.recordings
        if f"meters.{each.name}.recording.sha256" in report.not_noted and each.sha256
    ]
    return (*said, *digests)


def _head(report: RideReport, names: Naming) -> list[Block]:
    sheet = report.sheet
    meters = listed(
        f"{meter.id} ({meter.what if meter.product == 'not applicable' else names.product(meter.product)})"
        for meter in sheet.meters
    )
    drawn = " Drawn by a program: nothing of it was measured." if sheet.made == "generated" else ""
    blocks: list[Block] = [
        Heading(sheet.title, 1),
        Paragraph(f"{date_text(sheet.date)}, ridden by {sheet.rider}, recorded by {meters}.{drawn}", "quiet"),
    ]
    if report.void is not None:
        state = "is void" if sheet.standing.state == "void" else "is a bedding-in ride"
        blocks.append(
            Paragraph(f"This ride {state} and counts for nothing: {report.void}. It stays listed.", "caution")
        )
    if report.unread:
        rest = " The others are compared." if report.pairs else ""
        blocks.append(Paragraph(f"Could not be read: {shown(listed(report.unread))}.{rest}", "caution"))
    if report.reference and report.reference != sheet.percent_of:
        blocks.append(
            Paragraph(
                f"{sheet.percent_of}, in percent of which this ride was to be told, could not be read: the "
                f"clock is that of {report.reference}, and percentages are of the mean of both."
            )
        )
    return blocks
