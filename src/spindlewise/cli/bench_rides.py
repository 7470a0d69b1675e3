"""A folder of rides for `spindlewise bench ride`: one after the other, with the progress shown."""

import sys
from collections.abc import Generator, Sequence
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from spindlewise.cli.bench_out import hand_over
from spindlewise.cli.endings import DATA, no_answer
from spindlewise.cli.printing import answer, page, remark

if TYPE_CHECKING:
    from spindlewise.answer.bench_archive import RideLine
    from spindlewise.answer.desk import Desk
    from spindlewise.problems import Problem


def rides(
    desk: "Desk",
    folder: Path,
    loss_pct: tuple[float, float],
    style: str,
    product: str | None,
    snippet: bool,
    write: Path | None,
) -> None:
    """Compare all rides below the folder; of each only its line and its sessions stay in memory."""
    from spindlewise.answer.bench_session import (
        RideSession,
        product_sessions,
        reading_observations,
        with_ride,
    )
    from spindlewise.bench.ride_folders import ride_folders
    from spindlewise.cli.bench_ride import known_sessions
    from spindlewise.problems import render
    from spindlewise.render.as_json import as_json
    from spindlewise.render.as_markdown import as_markdown
    from spindlewise.render.as_text import as_text
    from spindlewise.render.words_archive import SCHEMA, archive_blocks, archive_json

    sheets = ride_folders(folder)
    if not sheets:
        no_answer(f"no ride.yaml in {folder} or below it", "`spindlewise bench sheet PRODUCT` begins one")
    problems: list[Problem] = []
    lines: list[RideLine] = []
    try:
        with closing(_lines(sheets, loss_pct, problems)) as compared:
            for line in compared:
                lines.append(line)  # what is there when it is broken off counts
    except KeyboardInterrupt:
        remark(f"Stopped: {len(lines)} of {len(sheets)} rides had been compared. Nothing was written.")
        raise
    lines.sort(key=lambda line: (line.date, line.ride))
    if problems:
        remark(render(problems, "plain").rstrip("\n"))
    held = [s for line in lines for s in line.sessions if isinstance(s, RideSession)]
    rows = tuple(known_sessions(desk.catalog.folder))
    for session in held:
        rows = with_ride(rows, session)
    day = max([desk.day, *(line.date for line in lines)])
    products = sorted({session.row.product for session in held})
    records = tuple(product_sessions(product, rows, day) for product in products)
    if snippet or write is not None:
        observations = [
            observation
            for record in records
            if product in (None, record.product)
            for observation in reading_observations(
                record, desk.catalog.folder, [s for s in held if s.row.product == record.product]
            )
        ]
        hand_over(observations, snippet, write, "reading", "three sessions that count are needed")
    if not snippet:
        if style == "json":
            answer(as_json(SCHEMA, archive_json(lines, records)))
        else:
            blocks = archive_blocks(desk.catalog, lines, records)
            if style == "terminal":
                page(blocks)
            else:
                answer(as_markdown(blocks) if style == "markdown" else as_text(blocks))
    if any(problem.level == "error" for problem in problems):
        raise typer.Exit(DATA)


def _lines(
    folders: Sequence[Path], loss_pct: tuple[float, float], problems: "list[Problem]"
) -> "Generator[RideLine]":
    from spindlewise.answer.bench_archive import ride_line
    from spindlewise.answer.bench_ride import ride_report
    from spindlewise.bench.ride_sheet import RideSheet
    from spindlewise.catalog.reading import read_record

    # closed at once when it is broken off, so that the bar is gone before anything is said
    with closing(_watched(folders)) as watched:
        for folder in watched:
            sheet, _, found = read_record(RideSheet, folder / "ride.yaml")
            problems += found
            if sheet is not None:
                report = ride_report(sheet, folder, folder.as_posix(), loss_pct)
                problems += report.problems
                yield ride_line(report)


def _watched(folders: Sequence[Path]) -> Generator[Path]:
    """The folders, with a bar on stderr where somebody looks at it."""
    if not sys.stderr.isatty():
        yield from folders
        return
    from rich.console import Console
    from rich.progress import track

    yield from track(folders, "Rides", console=Console(stderr=True), transient=True)
