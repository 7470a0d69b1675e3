"""`spindlewise price`: the record, the ranking at a price that is not yet true, and one more price."""

import typer

from spindlewise.cli import price_add, price_at, price_history, price_repair


def add_to(app: typer.Typer) -> None:
    """Add the group of commands."""
    group = typer.Typer(
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        help="Prices: the record, what if, and one more.",
    )
    for module in (price_add, price_history, price_at, price_repair):
        module.add_to(group)
    app.add_typer(group, name="price")
