"""`spindlewise bench history`: a product's sessions one after the other, and whether its reading drifts."""

from typing import Annotated

import typer

from spindlewise.cli.bench_out import Snippet, Write, hand_over
from spindlewise.cli.bench_ride import known_sessions
from spindlewise.cli.opening import known_product, open_desk
from spindlewise.cli.options import AsOf, Catalog, Json, common
from spindlewise.cli.printing import answer, page


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("history")(history)


def history(
    ctx: typer.Context,
    product: Annotated[str, typer.Argument(metavar="PRODUCT", help="The product's id.")],
    snippet: Snippet = False,
    write: Write = None,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Say what the bench has seen of a product, and whether its reading drifts.

    Sessions stand in the catalog's bench/sessions.csv, with the columns
    date,product,minutes,mean_difference_pct,sd_pct,verdict, then unit,ridden_km if you keep them. Void ones
    are listed and count for nothing.

    Together: the bias is the mean over the sessions that count, its plus-minus 2 s / sqrt(n) and at least
    0.2 %; the spread is the root mean square of their own. Three sessions are the least.
    """
    asked = common(ctx, catalog, as_of, json)
    desk = open_desk(asked)
    from spindlewise.answer.bench_session import product_sessions, reading_observations
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_session import HISTORY_SCHEMA, history_json
    from spindlewise.render.words_session import history_blocks

    name = known_product(product, desk.catalog)
    record = product_sessions(name, known_sessions(desk.catalog.folder), desk.day)
    if not snippet:
        if asked.json:
            answer(as_json(HISTORY_SCHEMA, history_json(record, desk.day)))
        else:
            page(history_blocks(desk.catalog, record, desk.day))
    if snippet or write is not None:
        observations = reading_observations(record, desk.catalog.folder)
        hand_over(observations, snippet, write, "reading", "three sessions that count are needed")
