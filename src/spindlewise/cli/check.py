"""`spindlewise check`: every problem of the catalog, each in its line."""

import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Annotated

import typer

from spindlewise.cli.endings import CANNOT_READ_OR_WRITE, DATA, UNREADABLE, wrong_usage
from spindlewise.cli.opening import catalog_folder
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer
from spindlewise.problems import Problem, Style, render, sorted_problems

STYLES: tuple[Style, ...] = ("plain", "human", "json", "github")


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("check")(check)


def check(
    ctx: typer.Context,
    form: Annotated[
        str | None,
        typer.Option(
            "--format",
            metavar="|".join(STYLES),
            help="Without it: human on a terminal, else plain.",
        ),
    ] = None,
    strict: Annotated[bool, typer.Option("--strict", help="Warnings count as errors.")] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say everything that is wrong in the catalog.

    All files are read, and all problems are said in one go.
    """
    asked = common(ctx, catalog, as_of, json)
    style = _style(form, asked.json)
    problems = all_problems(catalog_folder(asked.catalog))
    answer(render(problems, style, _source))
    failing = [p for p in problems if p.level == "error" or strict]
    if failing:
        unreadable = all(problem.rule in UNREADABLE for problem in failing)
        raise typer.Exit(CANNOT_READ_OR_WRITE if unreadable else DATA)


def _style(form: str | None, json: bool) -> Style:
    if json:
        return "json"
    if form is None:
        return "human" if sys.stdout.isatty() else "plain"
    if form not in STYLES:
        wrong_usage(f"--format {form!r} is not known; choose one of {', '.join(STYLES)}")
    return next(style for style in STYLES if style == form)


def all_problems(folder: Path) -> list[Problem]:
    """The problems of the catalog and of its buyers, in order of file and line."""
    from spindlewise.answer.asking import open_buyers
    from spindlewise.catalog.opening import open_catalog

    catalog, problems = open_catalog(folder, _progress)
    _, found = open_buyers(folder / "buyers", catalog)
    return sorted_problems([*problems, *found])


def _progress(paths: Iterable[Path], total: int) -> Iterator[Path]:
    if not sys.stderr.isatty() or total < 20:
        yield from paths
        return
    from rich.console import Console
    from rich.progress import track

    yield from track(paths, "Reading", total, console=Console(stderr=True), transient=True)


def _source(file: str) -> str | None:
    try:
        return Path(file).read_text("utf-8")
    except (OSError, ValueError):
        return None
