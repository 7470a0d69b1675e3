"""`spindlewise price repair`: take out a torn last line of the log, keeping a copy."""

import typer

from spindlewise.cli.opening import own_folder
from spindlewise.cli.options import Catalog, common
from spindlewise.cli.printing import answer


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("repair")(repair)


def repair(ctx: typer.Context, catalog: Catalog = None) -> None:
    """Take out a last line that a crash left half written.

    The log as it was is kept beside it. A log whose last line is whole is not touched.
    """
    from spindlewise.cli.torn_line import repair_torn_line
    from spindlewise.problems import quoted

    path = own_folder(common(ctx, catalog).catalog) / "prices.csv"
    found = repair_torn_line(path)
    if found is None:
        answer(f"{path}: the last line is whole; nothing was changed.\n")
    else:
        answer(f"{path}: took out {quoted(found.removed, 200)}; the log as it was is {found.copy}.\n")
