"""How a command ends when it cannot end well: one sentence to stderr and the exit code that fits."""

from collections.abc import Sequence
from typing import NoReturn

import typer

from spindlewise.cli.printing import remark
from spindlewise.problems import Problem, quoted, render, shown

DONE, BUG, USAGE, DATA, NO_ANSWER, CANNOT_READ_OR_WRITE = 0, 1, 2, 3, 4, 5
UNREADABLE = ("no-catalog", "unreadable-file")
"""Rules of problems that say that nothing could be read, rather than that what was read is wrong."""


def wrong_usage(message: str) -> NoReturn:
    """The command was given something that it cannot take."""
    remark(f"error: {shown(message)}")
    raise typer.Exit(USAGE)


def no_answer(message: str, tip: str = "") -> NoReturn:
    """The question was understood and has no answer."""
    remark(f"no answer: {shown(f'{message}; {tip}' if tip else message)}")
    raise typer.Exit(NO_ANSWER)


def cannot(message: str) -> NoReturn:
    """A file could not be read or written."""
    remark(f"error: {shown(message)}")
    raise typer.Exit(CANNOT_READ_OR_WRITE)


def bad_data(problems: Sequence[Problem]) -> NoReturn:
    """Files have errors: say them all, then what to do."""
    errors = [problem for problem in problems if problem.level == "error"]
    remark(render(errors, "plain").rstrip("\n"))
    unreadable = all(problem.rule in UNREADABLE for problem in errors)
    if not unreadable:
        count = "1 error" if len(errors) == 1 else f"{len(errors)} errors"
        remark(f"{count}: nothing is answered from data that are wrong. `spindlewise check` shows more.")
    raise typer.Exit(CANNOT_READ_OR_WRITE if unreadable else DATA)


def end_with(error: Exception) -> NoReturn:
    """The last resort: what a command did not expect becomes a sentence and never a traceback."""
    from spindlewise.answer.market import NoMarket
    from spindlewise.answer.missing import NoAnswer

    if isinstance(error, NoAnswer):
        no_answer(error.message, error.tip)
    if isinstance(error, NoMarket):
        no_answer(str(error))
    if isinstance(error, OSError):
        cannot(_told(error))
    remark(
        f"spindlewise itself failed ({type(error).__name__}: {quoted(str(error), 200)}). "
        "Please report this, with the command and the catalog."
    )
    raise typer.Exit(BUG)


def _told(error: OSError) -> str:
    """The file and why, in plain words where they are known."""
    from spindlewise.catalog.durable import CannotWrite, reason

    if isinstance(error, CannotWrite) or error.filename is None:
        return str(error)
    return f"{error.filename}: {'is not there' if isinstance(error, FileNotFoundError) else reason(error)}"
