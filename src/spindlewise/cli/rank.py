"""`spindlewise rank`: all products in order for one buyer."""

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
from spindlewise.cli.endings import NO_ANSWER, no_answer, wrong_usage
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common
from spindlewise.cli.printing import answer, page

if TYPE_CHECKING:
    from spindlewise.answer.could_lead import CouldLead
    from spindlewise.answer.desk import Desk
    from spindlewise.buyer.buyer import Buyer
    from spindlewise.render.blocks import Block

FORMATS = ("terminal", "text", "markdown", "csv", "json")


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("rank")(rank)


def rank(
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
    explain: Annotated[bool, typer.Option("--explain", help="Give the reasons for each place.")] = False,
    whole: Annotated[
        bool,
        typer.Option("--all", help="Show every place, where a screen shows the first 20 and their like."),
    ] = False,
    form: Annotated[str, typer.Option("--format", metavar="|".join(FORMATS))] = "terminal",
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Rank the products for one buyer.

    The buyer is a file, the id of one in the catalog, or single statements; these override a file.

    Example: spindlewise rank --budget 700 --weights price=40,weight=20 --receiver "watch:ANT+,Bluetooth"
    """
    asked = common(ctx, catalog, as_of, json)
    style = "json" if asked.json else form
    if style not in FORMATS:
        wrong_usage(f"--format {form!r} is not known; choose one of {', '.join(FORMATS)}")
    desk = open_desk(asked)
    stated = Statements(
        buyer, budget, region, currency, receiver, weights, order, rider_mass, both_sides, present
    )
    who = asking_buyer(stated, desk.catalog)
    _print_ranking(desk, who, style, explain, whole)


def _print_ranking(desk: "Desk", who: "Buyer", style: str, explain: bool, whole: bool) -> None:
    from spindlewise.answer.break_evens import break_evens
    from spindlewise.answer.market import NoMarket
    from spindlewise.answer.ranking import rank as ranked

    try:
        ranking = ranked(desk, who)
    except NoMarket as none:
        if style == "json":
            from spindlewise.render.as_json import as_json
            from spindlewise.render.json_rank import SCHEMA, nothing_json

            answer(as_json(SCHEMA, nothing_json(desk.day.isoformat(), who.id, str(none))))
        no_answer(str(none))
    even = break_evens(desk, ranking)
    leads: tuple[CouldLead, ...] = ()
    if explain and style != "csv":
        from spindlewise.answer.could_lead import could_lead

        leads = could_lead(ranking)
    if style == "json":
        from spindlewise.render.as_json import as_json
        from spindlewise.render.json_rank import SCHEMA, leads_json, rank_json

        answer(as_json(SCHEMA, {**rank_json(ranking, even), **leads_json(leads)}))
    elif style == "csv":
        from spindlewise.render.rank_sheet import rank_sheet

        answer(rank_sheet(desk.catalog, ranking, even))
    else:
        from spindlewise.render.words_rank import rank_blocks

        whole = whole or style == "markdown"
        _print_blocks(rank_blocks(desk.catalog, ranking, even, explain, leads, whole), style)
    if ranking.pick is None:
        raise typer.Exit(NO_ANSWER)


def _print_blocks(blocks: "tuple[Block, ...]", style: str) -> None:
    if style == "text":
        from spindlewise.render.as_text import as_text

        answer(as_text(blocks))
    elif style == "markdown":
        from spindlewise.render.as_markdown import as_markdown

        answer(as_markdown(blocks))
    else:
        page(blocks)
