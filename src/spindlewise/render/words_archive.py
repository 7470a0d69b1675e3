"""An archive of rides in words: a line for each pair of each ride, then what the sessions come to."""

from collections.abc import Sequence

from spindlewise.answer.bench_archive import RideLine
from spindlewise.answer.bench_session import ProductSessions
from spindlewise.catalog.catalog import Catalog
from spindlewise.problems import shown
from spindlewise.render.as_json import Json
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.json_ride import estimate_json
from spindlewise.render.json_session import record_json, sessions_json
from spindlewise.render.naming import listed, naming
from spindlewise.render.words_session import record_sentence, session_sentences
from spindlewise.units import percent_text

SCHEMA = "spindlewise bench rides 1"


def archive_blocks(
    catalog: Catalog, lines: Sequence[RideLine], records: tuple[ProductSessions, ...]
) -> tuple[Block, ...]:
    """The rides in order of date, the void ones too, and the sessions of each product."""
    names = naming(catalog)
    columns = (
        Column("Date"),
        Column("Ride", spare=3),
        Column("Meters"),
        Column("Difference", "right"),
        Column("Of", spare=2),
        Column("Agreement"),
        Column("Quality"),
        Column("Plausible", spare=1),
    )
    rows = [
        (
            line.date.isoformat(),
            line.ride,
            f"{pair.first}, {pair.second}",
            "" if pair.difference_pct is None else percent_text(pair.difference_pct.value, signed=True),
            pair.percent_of,
            pair.agreement,
            "void" if line.void is not None else pair.quality,
            pair.plausibility,
        )
        for line in lines
        for pair in line.pairs
    ]
    said = [f"{line.ride} counts for nothing: {line.void}." for line in lines if line.void is not None]
    said += [f"{line.ride}: not read: {shown(listed(line.unread))}." for line in lines if line.unread]
    blocks: list[Block] = [
        Heading("Rides", 1),
        Table("Each pair of meters of each ride, first less second", columns, tuple(rows)),
        *([Bullets(tuple(said))] if said else []),
        Heading("As sessions"),
        Bullets(
            tuple(text for line in lines for text in session_sentences(line.sessions, (), names))
            or ("No ride gives a session of a product.",)
        ),
    ]
    if records:
        blocks.append(Bullets(tuple(record_sentence(record, names) for record in records)))
    return (*blocks, Paragraph("Nothing is scored from one ride; another unit of a product may differ."))


def archive_json(lines: Sequence[RideLine], records: tuple[ProductSessions, ...]) -> dict[str, Json]:
    """The same as JSON, without the schema key."""
    return {
        "rides": [_line(line) for line in lines],
        "products": [{"product": record.product, **record_json(record)} for record in records],
    }


def _line(line: RideLine) -> Json:
    pairs: list[Json] = [
        {
            "first": pair.first,
            "second": pair.second,
            "percent_of": pair.percent_of,
            "difference_pct": estimate_json(pair.difference_pct),
            "agreement": pair.agreement,
            "data_quality": pair.quality,
            "plausibility": pair.plausibility,
        }
        for pair in line.pairs
    ]
    return {
        "id": line.ride,
        "date": line.date.isoformat(),
        "counts": line.void is None,
        "counts_because": line.void,
        "unread": list(line.unread),
        "pairs": pairs,
        "sessions": sessions_json(line.sessions, ()),
    }
