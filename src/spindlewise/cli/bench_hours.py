"""`spindlewise bench hours`: how long batteries ran, and whether the claim holds."""

from pathlib import Path
from typing import Annotated

import typer

from spindlewise.cli.bench_out import Snippet, Write, hand_over
from spindlewise.cli.endings import CANNOT_READ_OR_WRITE, DATA, no_answer
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, page, remark


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("hours")(hours)


def hours(
    ctx: typer.Context,
    file: Annotated[
        Path | None,
        typer.Argument(
            metavar="[FILE]", help="A CSV of charges and cell changes; without it the catalog's own."
        ),
    ] = None,
    snippet: Snippet = False,
    write: Write = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say how long batteries ran, and whether the claim holds.

    FILE has the columns date,product,cells,counter_h,event, in the order in which things were seen. Cells in
    the catalog's own words, counter_h the hours ridden so far, event fresh, empty or still running.
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.bench_hours import hours_observation, hours_report
    from spindlewise.answer.bench_observation import bench_source
    from spindlewise.catalog.run_row import read_runs
    from spindlewise.problems import render
    from spindlewise.render.as_json import as_json
    from spindlewise.render.words_hours import SCHEMA, hours_blocks, hours_json

    path = file if file is not None else desk.catalog.folder / "bench" / "hours.csv"
    rows, problems = read_runs(path, path.as_posix())
    report = hours_report(rows, desk.catalog, desk.day, problems)
    if report.problems:
        remark(render(report.problems, "plain").rstrip("\n"))
    if any(problem.rule in ("unreadable-file", "missing-file") for problem in report.problems):
        raise typer.Exit(CANNOT_READ_OR_WRITE)
    wrong = any(problem.level == "error" for problem in report.problems)
    if not report.ran and not wrong:
        no_answer(f"nothing ran by {desk.day.isoformat()} in {path}")
    if not snippet:
        if asked.json:
            answer(as_json(SCHEMA, hours_json(report, desk.day)))
        elif report.ran:
            page(hours_blocks(desk.catalog, report, desk.day))
    if snippet or write is not None:
        source = bench_source(path, desk.catalog.folder)
        observations = [found for one in report.ran if (found := hours_observation(one, source))]
        hand_over(observations, snippet, write, "hours", "one run to the end is needed")
    if wrong:
        raise typer.Exit(DATA)
