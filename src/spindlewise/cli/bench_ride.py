"""`spindlewise bench ride`: what the recordings of one ride say of the meters that made them."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.cli.bench_out import Snippet, Write, hand_over
from spindlewise.cli.endings import DATA, NO_ANSWER, bad_data, cannot, wrong_usage
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, page, remark

if TYPE_CHECKING:
    from spindlewise.bench.ride_sheet import RideSheet
    from spindlewise.catalog.session_row import SessionRow

FORMATS = ("terminal", "text", "markdown", "json")
SHEET = "ride.yaml"

Loss = Annotated[
    str | None,
    typer.Option(
        "--loss",
        metavar="LOW-HIGH",
        help="Percent that the chain may take between pedals and hub; without it 1.4-4.",
    ),
]


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("ride")(ride)


def ride(
    ctx: typer.Context,
    path: Annotated[
        Path,
        typer.Argument(
            metavar="FOLDER|FILE",
            help="A folder with ride.yaml, the sheet itself, or a folder of such folders.",
        ),
    ],
    loss: Loss = None,
    form: Annotated[
        str, typer.Option("--format", metavar="|".join(FORMATS), help="Without it: terminal.")
    ] = "terminal",
    product: Annotated[
        str | None, typer.Option(metavar="ID", help="Only observations of this product.")
    ] = None,
    snippet: Snippet = False,
    write: Write = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Compare the meters that recorded one ride.

    Lag and drift of each clock, dropouts, segments, how each pair agrees, three meters without a truth, the
    loss behind the chain. Three verdicts kept apart: agreement, data quality, plausibility.

    Observations need three sessions that count: those in the catalog's bench/sessions.csv, and this ride. A
    folder of rides gives one line a ride, and all of them as sessions.
    """
    asked = common(ctx, catalog, as_of, json)
    style = "json" if asked.json else form
    if style not in FORMATS:
        wrong_usage(f"--format {form!r} is not known; choose one of {', '.join(FORMATS)}")
    loss_pct = loss_range(loss)
    desk = open_desk(asked)
    if path.is_dir() and not (path / SHEET).is_file():
        from spindlewise.cli.bench_rides import rides

        rides(desk, path, loss_pct, style, product, snippet, write)
        return
    from spindlewise.answer.bench_ride import ride_report
    from spindlewise.answer.bench_session import (
        RideSession,
        product_sessions,
        reading_observations,
        ride_sessions,
        with_ride,
    )
    from spindlewise.problems import render
    from spindlewise.render.as_json import as_json
    from spindlewise.render.as_markdown import as_markdown
    from spindlewise.render.as_text import as_text
    from spindlewise.render.json_ride import SCHEMA, ride_json
    from spindlewise.render.words_ride import ride_blocks

    sheet = open_sheet(path)
    folder = path if path.is_dir() else path.parent
    report = ride_report(sheet, folder, folder.as_posix(), loss_pct)
    if report.problems:
        remark(render(report.problems, "plain").rstrip("\n"))
    known = known_sessions(desk.catalog.folder)
    sessions = ride_sessions(report)
    held = [session for session in sessions if isinstance(session, RideSession)]
    records = tuple(
        product_sessions(session.row.product, with_ride(known, session), max(desk.day, sheet.date))
        for session in held
    )
    if snippet or write is not None:
        observations = [
            observation
            for record, session in zip(records, held, strict=True)
            if product in (None, record.product)
            for observation in reading_observations(record, desk.catalog.folder, [session])
        ]
        hand_over(observations, snippet, write, "reading", "three sessions that count are needed")
    if not snippet:
        if style == "json":
            answer(as_json(SCHEMA, ride_json(report, sessions, records)))
        else:
            blocks = ride_blocks(desk.catalog, report, sessions, records)
            if style == "terminal":
                page(blocks)
            else:
                answer(as_markdown(blocks) if style == "markdown" else as_text(blocks))
    if any(problem.level == "error" for problem in report.problems):
        raise typer.Exit(DATA)
    if not report.pairs:
        raise typer.Exit(NO_ANSWER)


def open_sheet(path: Path) -> "RideSheet":
    """The sheet of a ride by its folder or its own path; ends the command where it has errors."""
    from spindlewise.bench.ride_sheet import RideSheet
    from spindlewise.catalog.reading import read_record

    file = path / SHEET if path.is_dir() else path
    if not file.is_file():
        cannot(f"{file}: there is no such file; `spindlewise bench sheet PRODUCT` begins one")
    sheet, _, problems = read_record(RideSheet, file)
    if sheet is None:
        bad_data(problems)
    return sheet


def known_sessions(folder: Path) -> list["SessionRow"]:
    """The catalog's own sessions; none where it keeps no file of them. Ends the command at an error in it."""
    from spindlewise.catalog.session_row import read_sessions

    path = folder / "bench" / "sessions.csv"
    if not path.exists():
        return []
    rows, problems = read_sessions(path, path.as_posix())
    if any(problem.level == "error" for problem in problems):
        bad_data(problems)
    return rows


def loss_range(text: str | None) -> tuple[float, float]:
    """The range of the chain's loss as stated, in percent; anything else is wrong usage.

    >>> loss_range("1.5-3"), loss_range(None)
    ((1.5, 3.0), (1.4, 4.0))
    """
    from spindlewise.answer.bench_pair import LOSS_PCT

    if text is None:
        return LOSS_PCT
    low, dash, high = text.partition("-")
    try:
        found = (float(low), float(high))
    except ValueError:
        dash = ""
    if not dash or not 0.0 <= found[0] <= found[1] < 100.0:
        wrong_usage(f"--loss {text[:40]!r} is not a range; write it as 1.4-4, in percent")
    return found
