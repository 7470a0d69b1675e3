"""`spindlewise publish`: the site of a catalog, with only what changed written anew."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.cli.endings import DATA, bad_data, wrong_usage
from spindlewise.cli.opening import open_desk, shelf
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, remark

if TYPE_CHECKING:
    from spindlewise.catalog.catalog import Catalog as Opened
    from spindlewise.site.build import Published

USUAL_OUT = Path("site_out")


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("publish")(publish)


def publish(
    ctx: typer.Context,
    out: Annotated[Path, typer.Option(metavar="DIR", help="Where the site goes.")] = USUAL_OUT,
    single_file: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write the whole site as this one HTML file instead of a folder."),
    ] = None,
    check: Annotated[
        bool,
        typer.Option(
            "--check", help="Write nothing; exit 3 where the site in DIR is out of date, and say why."
        ),
    ] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Write the site; what has not changed stays untouched.

    The new site is made beside the old one and takes its place at one stroke: no reader meets half of it.
    """
    if single_file is not None and out != USUAL_OUT:
        wrong_usage("--out names a folder and --single-file a file; name one of them")
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    publish_site(desk.catalog, desk.day, single_file or out, asked.json, check, single_file is not None)


def publish_site(
    catalog: "Opened",
    day: date,
    out: Path,
    json: bool = False,
    only_check: bool = False,
    one_file: bool = False,
) -> None:
    """Publish, or only look what a publish would do, and say which files changed."""
    from spindlewise.answer.asking import open_buyers
    from spindlewise.cli.publish_bar import publish_bar
    from spindlewise.site import build

    buyers, problems = open_buyers(catalog.folder / "buyers", catalog)
    if any(problem.level == "error" for problem in problems):
        bad_data(problems)
    with publish_bar() as progress:
        if one_file:
            act = build.compared_single if only_check else build.publish_single
            done = act(catalog, buyers, day, out, progress)
        else:
            act_on = build.compared if only_check else build.publish
            done = act_on(catalog, buyers, day, out, progress, shelf())
    _tell(done, day, out, json, only_check)
    if only_check and (done.changed or done.removed):
        raise typer.Exit(DATA)


def _tell(done: "Published", day: date, out: Path, json: bool, only_check: bool) -> None:
    from spindlewise.render.as_json import Json, as_json

    if json:
        told: dict[str, Json] = {
            "as_of": day.isoformat(),
            "out": str(out),
            "written": not only_check,
            "files": done.files,
            "changed": list(done.changed),
            "removed": list(done.removed),
            "kept": list(done.kept),
        }
        answer(as_json("spindlewise publish 1", told))
    else:
        answer("\n".join(_lines(done, out, only_check)) + "\n")
    if done.file_by_file:
        remark(f"Written file by file, the manifest last: {done.file_by_file}.")


def _lines(done: "Published", out: Path, only_check: bool) -> list[str]:
    changed, removed = ("changes", "goes") if only_check else ("changed", "removed")
    lines = [f"{changed:<8} {path}" for path in done.changed]
    lines += [f"{removed:<8} {path}" for path in done.removed]
    lines += [f"kept     {path} (changed by somebody else; no longer part of the site)" for path in done.kept]
    count = _files(len(done.changed))
    if not only_check:
        return [*lines, f"{out}: {count} changed, {done.unchanged} as they were."]
    if not done.changed and not done.removed:
        return [*lines, f"{out}: up to date, {_files(done.unchanged)}."]
    if not done.unchanged and not done.removed:
        return [*lines, f"{out}: nothing of the site stands there yet; {count} would be written."]
    going = f", {len(done.removed)} would go" if done.removed else ""
    return [
        *lines,
        f"{out}: out of date; {count} would change{going}, {done.unchanged} are as they should be.",
    ]


def _files(count: int) -> str:
    return "1 file" if count == 1 else f"{count} files"
