"""The command `spindlewise`: what there is to ask, and how every command ends."""

import gc
import os
import sys
from typing import Annotated, Any

import typer
from typer.core import TyperGroup

from spindlewise.cli import (
    answer,
    bench,
    check,
    ladder,
    new,
    preview,
    price,
    publish,
    rank,
    recheck,
    schema,
    swap,
    versus,
)
from spindlewise.cli.options import AsOf, Catalog, Common, Json

GARBAGE_AFTER = (100_000, 20, 100)
"""A start makes so many lasting things that looking for garbage among them takes an eighth of it."""


class Commands(TyperGroup):
    """The commands; whatever one of them did not expect ends in a sentence and an exit code."""

    def invoke(self, ctx: Any) -> Any:
        """Run the command that was asked for."""
        try:
            return super().invoke(ctx)
        except (typer.TyperException, typer.Exit, typer.Abort, BrokenPipeError):
            raise
        except Exception as error:  # the one place where everything ends in a sentence
            from spindlewise.cli.endings import end_with

            end_with(error)


app = typer.Typer(
    name="spindlewise",
    cls=Commands,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="Which power pedals to buy: for one buyer, how sure, and what would change the answer.",
    epilog="Exit codes: 0 done, 2 wrong usage, 3 errors in the data, 4 no answer, 5 cannot read or write.",
)


def _say_version(wanted: bool) -> None:
    if wanted:
        from importlib.metadata import version

        sys.stdout.write(f"spindlewise {version('spindlewise')}\n")
        raise typer.Exit()


@app.callback()
def commands(
    ctx: typer.Context,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
    _version: Annotated[
        bool, typer.Option("--version", callback=_say_version, is_eager=True, help="Say the version.")
    ] = False,
) -> None:
    """Options before the command hold for it as well."""
    ctx.obj = Common(catalog, as_of, json)


for module in (
    check,
    rank,
    answer,
    recheck,
    versus,
    ladder,
    swap,
    price,
    bench,
    new,
    publish,
    preview,
    schema,
):
    module.add_to(app)


def run() -> None:
    """Run the command line; the entry point of the installed program."""
    gc.set_threshold(*GARBAGE_AFTER)
    # our matrices are small: threads of numpy's own would wait for each other longer than they work
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    # no plugin of another package has a say in what is valid here, and looking for one takes time
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # a terminal that cannot show a character gets its number, not a traceback
            stream.reconfigure(errors="backslashreplace")
    try:
        try:
            app()
        finally:
            sys.stdout.flush()
            gc.freeze()  # the process ends: its memory goes as a whole, nothing in it is looked through again
    except BrokenPipeError:
        # the reader has hung up; what is still in the buffer goes nowhere, without a word at the exit
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        raise SystemExit(0) from None
