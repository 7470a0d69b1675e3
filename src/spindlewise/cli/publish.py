"""`spindlewise publish`: the site of a catalog, with only what changed written anew."""

import sys
from collections.abc import Iterable, Iterator
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeVar

import typer

from spindlewise.cli.endings import bad_data
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer

if TYPE_CHECKING:
    from spindlewise.catalog.catalog import Catalog as Opened

USUAL_OUT = Path("site_out")
Each = TypeVar("Each")


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("publish")(publish)


def publish(
    ctx: typer.Context,
    out: Annotated[Path, typer.Option(metavar="DIR", help="Where the site goes.")] = USUAL_OUT,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Write the site; what has not changed stays untouched."""
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    publish_site(desk.catalog, desk.day, out, asked.json)


def publish_site(catalog: "Opened", day: date, out: Path, json: bool = False) -> None:
    """Publish, and say which files changed."""
    from spindlewise.answer.asking import open_buyers
    from spindlewise.render.as_json import Json, as_json
    from spindlewise.site.build import publish as publish_all

    buyers, problems = open_buyers(catalog.folder / "buyers", catalog)
    if any(problem.level == "error" for problem in problems):
        bad_data(problems)
    done = publish_all(catalog, buyers, day, out, _progress)
    if json:
        told: dict[str, Json] = {
            "as_of": day.isoformat(),
            "out": str(out),
            "files": done.files,
            "changed": list(done.changed),
            "removed": list(done.removed),
            "kept": list(done.kept),
        }
        answer(as_json("spindlewise publish 1", told))
        return
    lines = [f"changed  {path}" for path in done.changed]
    lines += [f"removed  {path}" for path in done.removed]
    lines += [f"kept     {path} (changed by somebody else; no longer part of the site)" for path in done.kept]
    count = "1 file" if len(done.changed) == 1 else f"{len(done.changed)} files"
    lines.append(f"{out}: {count} changed, {done.unchanged} as they were.")
    answer("\n".join(lines) + "\n")


def _progress(jobs: Iterable[Each], total: int) -> Iterator[Each]:
    if not sys.stderr.isatty():
        yield from jobs
        return
    from rich.console import Console
    from rich.progress import track

    yield from track(jobs, "Making pages", total, console=Console(stderr=True), transient=True)
