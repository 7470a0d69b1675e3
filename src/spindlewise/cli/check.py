"""`spindlewise check`: every problem of the catalog, each in its line."""

import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Annotated

import typer

from spindlewise.cli.endings import CANNOT_READ_OR_WRITE, DATA, UNREADABLE, wrong_usage
from spindlewise.cli.opening import catalog_folder
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, remark
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
    against: Annotated[
        Path | None,
        typer.Option(
            "--against",
            metavar="SITE",
            help="Also hold logs, recordings and pages to the digests of this published site.",
        ),
    ] = None,
    strict: Annotated[bool, typer.Option("--strict", help="Warnings count as errors.")] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say everything that is wrong in the catalog.

    All files are read, and all problems are said in one go; recordings behind the bench's observations are
    held to the digests that stand there. With --against, a single bit that has changed
    in a log, a recording or a page since that publish is found; lines added to a log are no problem.
    """
    asked = common(ctx, catalog, as_of, json)
    style = _style(form, asked.json)
    folder = catalog_folder(asked.catalog)
    problems, read = read_all(folder)
    if against is not None:
        from spindlewise.site.recorded import held_to_record

        problems = sorted_problems([*problems, *held_to_record(folder, against)])
    answer(render(problems, style, _source))
    if style != "json":
        remark(verdict_words(problems, read, folder))
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


def verdict_words(problems: Sequence[Problem], read: str, folder: Path) -> str:
    """The last word: how much is wrong, or that nothing is, and how much was read."""
    errors = sum(problem.level == "error" for problem in problems)
    counts = (errors, "error"), (len(problems) - errors, "warning")
    said = " and ".join(_counted(*count) for count in counts if count[0]) or "nothing is wrong"
    return f"{folder}: {said}{f'; read {read}' if read else ''}."


def _counted(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


def read_all(folder: Path) -> tuple[list[Problem], str]:
    """The problems of the catalog and of its buyers, in order of file and line, and how much was read.

    The second is empty where errors keep the catalog from being read as a whole.
    """
    from spindlewise.answer.asking import open_buyers
    from spindlewise.catalog.bench_digests import changed_recordings
    from spindlewise.catalog.opening import open_catalog

    catalog, problems = open_catalog(folder, _progress)
    problems = [*problems, *changed_recordings(folder)]
    buyers, found = open_buyers(folder / "buyers", catalog)
    read = ""
    if catalog is not None:
        counts = (len(catalog.products), "product"), (len(buyers), "buyer"), (len(catalog.prices), "price")
        read = ", ".join(_counted(*count) for count in counts)
        read += f" and {_counted(len(catalog.bench_files), 'bench file')}"
    return sorted_problems([*problems, *found]), read


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
