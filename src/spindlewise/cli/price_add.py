"""`spindlewise price add`: append one price to the log, and say what it changes."""

import csv
import io
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.cli.asked import Statements, asking_buyer
from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import known_product, open_desk, own_folder
from spindlewise.cli.options import AsOf, BuyerName, Catalog, Json, common, day_from
from spindlewise.cli.printing import answer, page, remark

if TYPE_CHECKING:
    from spindlewise.catalog.catalog import Catalog as Opened
    from spindlewise.catalog.price_row import PriceRow

USUAL_SOURCE = "typed in"


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("add")(add)


def add(
    ctx: typer.Context,
    product: Annotated[str, typer.Argument(metavar="PRODUCT", help="The product's id.")],
    amount: Annotated[str, typer.Argument(metavar="AMOUNT", help="The price as seen, a plain number.")],
    seller: Annotated[str, typer.Option(metavar="TEXT", help="Who asks it.")],
    region: Annotated[
        str | None, typer.Option(metavar="CODE", help="Where; without it the buyer's, else the first.")
    ] = None,
    currency: Annotated[
        str | None, typer.Option(metavar="CODE", help="Of the amount; without it the region's.")
    ] = None,
    tax: Annotated[
        str | None,
        typer.Option(metavar="in|out", help="Whether tax is in the amount; without it the region's habit."),
    ] = None,
    kind: Annotated[
        str, typer.Option(metavar="list|street|offer|clearance", help="What kind of price it is.")
    ] = "street",
    seen: Annotated[
        date | None,
        typer.Option(
            "--date", metavar="DATE", parser=day_from, help="When it was seen; without it the as-of day."
        ),
    ] = None,
    valid_until: Annotated[
        date | None,
        typer.Option(
            metavar="DATE", parser=day_from, help="The last day on which it holds; an offer needs one."
        ),
    ] = None,
    source: Annotated[str, typer.Option(metavar="TEXT", help="Where it can be seen.")] = USUAL_SOURCE,
    buyer: BuyerName = None,
    publish: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Publish the site here afterwards.")
    ] = None,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Show what it would change; write nothing.")
    ] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Append one price and say what it changes.

    The line is checked like every other before anything is written; nothing that stands is rewritten.
    """
    asked = common(ctx, catalog, as_of, json)
    if not dry_run:
        own_folder(asked.catalog)
    desk = open_desk(asked)
    from spindlewise.answer.break_evens import break_evens
    from spindlewise.answer.price_change import price_change, with_row
    from spindlewise.catalog.price_log import append_price
    from spindlewise.render.as_json import as_json
    from spindlewise.render.json_prices import CHANGE_SCHEMA, change_json
    from spindlewise.render.naming import naming
    from spindlewise.render.words_prices import change_blocks, row_words

    name = known_product(product, desk.catalog)
    # a named buyer asks from home, wherever the price was seen
    who = asking_buyer(Statements(buyer=buyer, region=None if buyer else region), desk.catalog)
    where = (region or who.region).upper()
    money = currency.upper() if currency else _region_currency(where, desk.catalog)
    until = valid_until.isoformat() if valid_until else ""
    day = (seen or desk.day).isoformat()
    habit = desk.catalog.taxes.rate(where, seen or desk.day)
    basis = tax or (habit.habit if habit else "in")
    fields = (day, name, where, money, amount.strip(), basis, kind, seller, until, source)
    row = checked_row(fields, desk.catalog)
    if row.date > desk.day:
        remark(f"The price is dated {day}, after the as-of day {desk.day.isoformat()}: it is not seen yet.")
    after = with_row(desk, row)
    change = price_change(desk, after, who, name)
    if not dry_run:
        append_price(desk.catalog.folder / "prices.csv", row)
    if asked.json:
        even = break_evens(after, change.after)
        answer(as_json(CHANGE_SCHEMA, change_json(change, row, even, written=not dry_run)))
    else:
        verb = "Would be added" if dry_run else "Added"
        title = f"{verb}: {row_words(row, naming(desk.catalog))}"
        page(change_blocks(desk.catalog, change, title, true=not dry_run))
    if publish is not None and not dry_run:
        from spindlewise.cli.publish import publish_site

        publish_site(after.catalog, after.day, publish)


def checked_row(fields: tuple[str, ...], catalog: "Opened") -> "PriceRow":
    """The fields as a row of the log, checked as the log's reader does; ends the command otherwise."""
    from spindlewise.catalog.csv_text import Row
    from spindlewise.catalog.price_log import price_of
    from spindlewise.problems import Problem

    problems: list[Problem] = []
    line = io.StringIO()
    csv.writer(line, lineterminator="").writerow(fields)
    row = price_of(Row("the new line", 0, fields, line.getvalue()), problems)
    said = [f"{p.message}; {p.tip}" if p.tip else p.message for p in problems]
    hidden = next((field for field in fields if not field.isprintable()), None)
    if hidden is not None:
        said.append("a field has characters that cannot be seen; write plain text")
    if fields[2] not in catalog.settings.regions:
        said.append(
            f"region: the catalog has no region {fields[2]}; it has {', '.join(catalog.settings.regions)}"
        )
    if row is not None and _stands(row, catalog):
        said.append("the same line stands in the log already")
    if row is None or said:
        wrong_usage("; ".join(said) or "the line is not a price")
    return row


def _stands(row: "PriceRow", catalog: "Opened") -> bool:
    from spindlewise.catalog.price_rows import rows_of

    return any(row.cells() == price.cells() for price in rows_of(catalog.prices, row.product))


def _region_currency(region: str, catalog: "Opened") -> str:
    facts = catalog.settings.regions.get(region)
    if facts is None:
        wrong_usage(f"the catalog has no region {region}; it has {', '.join(catalog.settings.regions)}")
    return facts.currency
