"""Sessions of the bench in words: what a ride adds, what all of them come to, and how they move on."""

from datetime import date

from spindlewise.answer.bench_session import (
    NoSession,
    ProductSessions,
    RideSession,
    missing_sessions,
    session_line,
)
from spindlewise.bench.estimate import Estimate
from spindlewise.bench.weighing import rounded_up
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.naming import Naming, naming
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.units import number_text, percent_text

NOT_NOTED = "not noted"


def session_sentences(
    sessions: tuple[RideSession | NoSession, ...], records: tuple[ProductSessions, ...], names: Naming
) -> tuple[str, ...]:
    """For each product of a ride: the line for the sessions, or why there is none; and what all come to."""
    said = []
    by_product = {record.product: record for record in records}
    for session in sessions:
        if isinstance(session, NoSession):
            said.append(f"{names.product(session.product)}: no session, {session.because}.")
            continue
        product = names.product(session.row.product)
        said.append(f"{product}, as a line of bench/sessions.csv: {session_line(session.row)}")
        record = by_product.get(session.row.product)
        if record is not None:
            said.append(record_sentence(record, names))
    return tuple(said)


def record_sentence(record: ProductSessions, names: Naming) -> str:
    """What all sessions of a product come to, or how many are missing until anything is scored."""
    lead = f"{names.product(record.product)}: {len(record.counted)} of {len(record.rows)} sessions count"
    found = record.record
    if found is None:
        return f"{lead}; with {missing_sessions(record)} more there will be an observation."
    bias, spread = found.bias, found.spread
    return (
        f"{lead}; together a bias of {percent_text(bias.pct, signed=True)} ± "
        f"{percent_text(rounded_up(bias.plus_minus_pct, 0.1))} and a spread of {percent_text(spread.pct)} ± "
        f"{percent_text(rounded_up(spread.plus_minus_pct, 0.1))}."
    )


def history_blocks(catalog: Catalog, record: ProductSessions, day: date) -> tuple[Block, ...]:
    """A product's sessions from the first to the last, void ones too, and whether its reading drifts."""
    names = naming(catalog)
    head = Heading(f"What the bench has seen of the {names.product(record.product)}", 1)
    if not record.rows:
        told = (
            f"There was no session by {day.isoformat()}. `spindlewise bench ride` ends with a ride's line "
            "for bench/sessions.csv."
        )
        return head, Paragraph(told, "important")
    said = (record_sentence(record, names), *drift_sentences(record))
    return (
        head,
        Paragraph(
            f"As of {day.isoformat()}. Differences are from the bench's reference meter, in percent of it.",
            "quiet",
        ),
        sessions_table(record),
        Bullets(said),
        *notice_of_invention(catalog),
    )


def sessions_table(record: ProductSessions) -> Table:
    """Every session, those that count for nothing with the reason; unit and distance where any was noted."""
    units = any(row.unit for row in record.rows)
    ridden = any(row.ridden_km is not None for row in record.rows)
    columns = [
        Column("Date"),
        Column("Minutes", "right", spare=3),
        Column("Difference", "right"),
        Column("Spread", "right", spare=1),
    ]
    columns += [Column("Unit", spare=2)] if units else []
    columns += [Column("Ridden", "right", spare=2)] if ridden else []
    rows = []
    for row in record.rows:
        cells = [
            row.date.isoformat(),
            number_text(row.minutes),
            percent_text(row.mean_difference_pct, signed=True),
            percent_text(row.sd_pct),
        ]
        cells += [row.unit or NOT_NOTED] if units else []
        cells += (
            [f"{number_text(row.ridden_km)} km" if row.ridden_km is not None else NOT_NOTED] if ridden else []
        )
        rows.append((*cells, row.verdict))
    return Table(
        "Every session, those too that count for nothing", (*columns, Column("Verdict")), tuple(rows)
    )


def drift_sentences(record: ProductSessions) -> tuple[str, ...]:
    """How the bias moves with the kilometres and with time, of one unit where units are named."""
    said = []
    if record.per_1000_km is not None:
        said.append(f"Per 1,000 km {_moves(record.per_1000_km)}")
    if record.per_year is not None:
        said.append(f"Per year {_moves(record.per_year)}")
    if not said:
        said.append("Whether the reading drifts cannot be told from these sessions.")
    return tuple(said)


def _moves(slope: Estimate) -> str:
    between = f"(between {percent_text(slope.low, 2, True)} and {percent_text(slope.high, 2, True)})"
    moved = f"the difference moves by {percent_text(slope.value, 2, True)} {between}"
    return f"{moved}: no drift is proved." if slope.holds(0.0) else f"{moved}: it drifts."
