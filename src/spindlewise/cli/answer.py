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
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Answer one buyer in full, ready to paste.

    The pick and why, what it does to the bike, what would change it, and what nobody knows.
    """
    from spindlewise.answer.reply import reply_to

    asked = common(ctx, catalog, as_of, json)
    to_file = output if output is not None and str(output) != "-" else None
    style = _style("json" if asked.json else form, to_file)
    desk = open_desk(asked)
    stated = Statements(
        buyer, budget, region, currency, receiver, weights, order, rider_mass, both_sides, present
    )
    reply = reply_to(desk, asking_buyer(stated, desk.catalog))
    text = said(desk.catalog, reply, style)
    if to_file is None:
        print_answer(text)
    else:
        from spindlewise.catalog.durable import replace_file

        replace_file(to_file, text.encode())
        remark(f"{to_file} written.")
    if reply.pick is None:
        raise typer.Exit(NO_ANSWER)


def _style(form: str | None, to_file: Path | None) -> str:
    if form is None:
        return "terminal" if to_file is None else BY_ENDING.get(to_file.suffix.lower(), "text")
    if form not in FORMATS:
        wrong_usage(f"--format {form!r} is not known; choose one of {', '.join(FORMATS)}")
    return form


def said(catalog: "Opened", reply: "Reply", style: str) -> str:
    """The reply in the medium asked for."""
    from spindlewise.render.as_json import as_json
    from spindlewise.render.as_markdown import as_markdown
    from spindlewise.render.as_terminal import as_terminal
    from spindlewise.render.as_text import as_text
    from spindlewise.render.json_reply import SCHEMA, reply_json
    from spindlewise.render.words_reply import reply_blocks

    if style == "json":
        return as_json(SCHEMA, reply_json(catalog, reply))
    blocks = reply_blocks(catalog, reply)
    if style == "markdown":
        return as_markdown(blocks)
    return as_text(blocks) if style == "text" else as_terminal(blocks, width(), colour())
