"""`spindlewise recheck`: which logged answers no longer hold, and why."""

from pathlib import Path
from typing import Annotated

import typer

from spindlewise.cli.endings import CANNOT_READ_OR_WRITE, DATA
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, page, remark

LOG = Path("answers.jsonl")
"""Where `answer --log` keeps answers unless another file is named."""


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("recheck")(recheck)


def recheck(
    ctx: typer.Context,
    log: Annotated[
        Path, typer.Argument(metavar="LOG", help="The answer log; without it answers.jsonl here.")
    ] = LOG,
    repair: Annotated[
        bool, typer.Option("--repair", help="First take out a last line that a crash left half written.")
    ] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say which logged answers no longer hold, and why.

    Every question is asked again on today's catalog; where the pick has changed, the reply to paste is given.
    With --repair a torn last line is taken out first, and the log as it was is kept beside it.
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    if repair:
        _mend(log)
    from spindlewise.answer.answer_log import read_answers
    from spindlewise.answer.recheck import recheck as read_again
    from spindlewise.problems import render
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_recheck import SCHEMA, recheck_json
    from spindlewise.render.words_recheck import recheck_blocks

    entries, problems = read_answers(log, log.as_posix())
    if problems:
        remark(render(problems, "plain").rstrip("\n"))
        if any(problem.rule == "unreadable-file" for problem in problems):
            raise typer.Exit(CANNOT_READ_OR_WRITE)
    found = read_again(desk, entries)
    day = desk.day.isoformat()
    if asked.json:
        answer(as_json(SCHEMA, recheck_json(desk.catalog, found, day)))
    else:
        page(recheck_blocks(desk.catalog, found, day))
    if problems:
        raise typer.Exit(DATA)


def _mend(log: Path) -> None:
    from spindlewise.cli.torn_line import repair_torn_line
    from spindlewise.problems import quoted

    found = repair_torn_line(log)
    if found is None:
        remark(f"{log}: the last line is whole; nothing was changed.")
    else:
        remark(f"{log}: took out {quoted(found.removed, 200)}; the log as it was is {found.copy}.")
