"""`spindlewise answer`: the whole reply to one buyer, ready to paste."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.cli.asked import (
    BothSides,
    Budget,
    Currency,
    Order,
    Present,
    Receivers,
    Region,
    RiderMass,
    Statements,
    Weights,
    asking_buyer,
)
from spindlewise.cli.endings import NO_ANSWER, wrong_usage
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common
from spindlewise.cli.printing import answer as print_answer
from spindlewise.cli.printing import colour, remark, width

if TYPE_CHECKING:
    from spindlewise.answer.reply import Reply
    from spindlewise.catalog.catalog import Catalog as Opened

FORMATS = ("terminal", "text", "markdown", "json")
BY_ENDING = {".md": "markdown", ".json": "json"}


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("answer")(answer)


def answer(
    ctx: typer.Context,
    buyer: BuyerName = None,
    budget: Budget = None,
    region: Region = None,
    currency: Currency = None,
    receiver: Receivers = None,
    weights: Weights = None,
    order: Order = None,
    rider_mass: RiderMass = None,
    both_sides: BothSides = False,
    present: Present = None,
    form: Annotated[
        str | None,
        typer.Option(
            "--format", metavar="|".join(FORMATS), help="Without it: terminal, or by the file's ending."
        ),
    ] = None,
    output: Annotated[
        Path | None, typer.Option("--output", "-o", metavar="FILE", help="Write the reply here; - is stdout.")
    ] = None,
    max_bytes: Annotated[
        int | None,
        typer.Option(
            "--max-bytes",
            metavar="N",
            min=1,
            help="Leave out sections until it fits; never what must be said.",
        ),
    ] = None,
    batch: Annotated[
        Path | None,
        typer.Option(
            "--batch",
            metavar="CSV",
            help="Answer a form's questions: a table to stdout, or with --output FOLDER one file for each.",
        ),
    ] = None,
    log: Annotated[
        Path | None,
        typer.Option("--log", metavar="FILE", help="Keep the answer in this log, for `recheck`."),
    ] = None,
    keep_private: Annotated[
        bool, typer.Option("--keep-private", help="Keep body, rider weight and balance in the log too.")
    ] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Answer one buyer in full, ready to paste.

    The pick and why, what it does to the bike, what would change it, and what nobody knows.
    """
    from spindlewise.answer.reply import reply_to

    asked = common(ctx, catalog, as_of, json)
    if batch is not None:
        from spindlewise.cli.answer_batch import answer_batch

        batch_form = "json" if asked.json else form
        answer_batch(open_desk(asked), batch, output, batch_form and _style(batch_form, None))
    to_file = output if output is not None and str(output) != "-" else None
    style = _style("json" if asked.json else form, to_file)
    desk = open_desk(asked)
    stated = Statements(
        buyer, budget, region, currency, receiver, weights, order, rider_mass, both_sides, present
    )
    reply = reply_to(desk, asking_buyer(stated, desk.catalog))
    text = said(desk.catalog, reply, style, max_bytes)
    if to_file is None:
        print_answer(text)
    else:
        from spindlewise.catalog.durable import replace_file

        replace_file(to_file, text.encode())
        remark(f"{to_file} written.")
    if log is not None:
        from spindlewise.answer.answer_log import append_answer, to_log

        append_answer(log, to_log(desk, reply.ranking, keep_private))
        remark(f"Kept in {log}.")
    if reply.pick is None:
        raise typer.Exit(NO_ANSWER)


def _style(form: str | None, to_file: Path | None) -> str:
    if form is None:
        return "terminal" if to_file is None else BY_ENDING.get(to_file.suffix.lower(), "text")
    if form not in FORMATS:
        wrong_usage(f"--format {form!r} is not known; choose one of {', '.join(FORMATS)}")
    return form


def said(catalog: "Opened", reply: "Reply", style: str, limit: int | None = None) -> str:
    """The reply in the medium asked for, in at most `limit` bytes if one is given (not for JSON)."""
    from spindlewise.render.as_json import as_json
    from spindlewise.render.as_markdown import as_markdown
    from spindlewise.render.as_terminal import as_terminal
    from spindlewise.render.as_text import as_text
    from spindlewise.render.blocks import blocks_of
    from spindlewise.render.json_reply import SCHEMA, reply_json
    from spindlewise.render.shortened import TooShort, shortened
    from spindlewise.render.words_reply import reply_sections

    if style == "json":
        return as_json(SCHEMA, reply_json(catalog, reply))
    sections = reply_sections(catalog, reply)
    if style == "terminal" and limit is None:
        return as_terminal(blocks_of(sections), width(), colour())
    say = as_markdown if style == "markdown" else as_text
    if limit is None:
        return say(blocks_of(sections))
    try:
        return shortened(sections, say, limit)
    except TooShort as error:
        wrong_usage(str(error))
