"""`spindlewise bench weigh`: what was weighed, how sure, and whether the claim holds."""

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
    app.command("weigh")(weigh)


def weigh(
    ctx: typer.Context,
    file: Annotated[
        Path | None,
        typer.Argument(metavar="FILE", help="A CSV of weighings; without it the catalog's own."),
    ] = None,
    product: Annotated[str | None, typer.Option(metavar="ID", help="Only weighings of this product.")] = None,
    snippet: Snippet = False,
    write: Write = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say what was weighed, how sure that is, and whether the claim holds.

    FILE has the columns date,product,what,batteries,cleats,reading_g,scale,resolution_g, one reading a line.
    What is pair, one pedal, left or right; batteries in, out or not applicable; cleats on or off. Then there
    may be tare_g (what held the pedals, weighed alone), correction_g and calibration_g (from the scale's
    certificate; the second is its expanded uncertainty, k = 2).
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.bench_observation import bench_source
    from spindlewise.answer.bench_weigh import weigh_report, weight_observation
    from spindlewise.catalog.weighing_row import read_weighings
    from spindlewise.problems import render
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_weigh import SCHEMA, weigh_json
    from spindlewise.render.words_weigh import weigh_blocks

    path = file if file is not None else desk.catalog.folder / "bench" / "weighings.csv"
    rows, problems = read_weighings(path, path.as_posix())
    rows = [row for row in rows if product is None or row.product == product]
    report = weigh_report(rows, desk.catalog, desk.day, problems)
    if report.problems:
        remark(render(report.problems, "plain").rstrip("\n"))
    if any(problem.rule in ("unreadable-file", "missing-file") for problem in report.problems):
        raise typer.Exit(CANNOT_READ_OR_WRITE)
    wrong = any(problem.level == "error" for problem in report.problems)
    if not report.weighed and not wrong:
        no_answer(f"nothing was weighed by {desk.day.isoformat()} in {path}")
    source = bench_source(path, desk.catalog.folder)
    observations = [found for one in report.weighed if (found := weight_observation(one, source))]
    if not snippet:
        if asked.json:
            answer(as_json(SCHEMA, weigh_json(report, desk.day)))
        elif report.weighed:
            page(weigh_blocks(desk.catalog, report, desk.day))
    if snippet or write is not None:
        hand_over(
            observations, snippet, write, "weight", "two readings or more of a pair or a pedal are needed"
        )
    if wrong:
        raise typer.Exit(DATA)
