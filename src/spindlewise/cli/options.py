"""Options that several commands share, and how those before the command and after it come together."""

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

COMMON = "Common options"
QUESTION = "The question"
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def day_from(text: str | date) -> date:
    """A day as YYYY-MM-DD; anything else is wrong usage."""
    if isinstance(text, date):
        return text
    try:
        if not _DAY.fullmatch(text):
            raise ValueError
        return date.fromisoformat(text)
    except ValueError:
        raise typer.BadParameter(f"{text[:40]!r} is not a day; write it as 2026-11-20") from None


Catalog = Annotated[
    Path | None,
    typer.Option(
        metavar="DIR",
        help="The catalog's folder; without it ./catalog, else the demo.",
        rich_help_panel=COMMON,
    ),
]
AsOf = Annotated[
    date | None,
    typer.Option(
        metavar="DATE",
        parser=day_from,
        help="Read the catalog as it stood on this day; without it the catalog's own day, else today.",
        rich_help_panel=COMMON,
    ),
]
Json = Annotated[bool, typer.Option("--json", help="Print JSON in place of words.", rich_help_panel=COMMON)]
BuyerName = Annotated[
    str | None,
    typer.Option(
        metavar="FILE|ID",
        help="A buyer file, or the id of one of the catalog's buyers.",
        rich_help_panel=QUESTION,
    ),
]


@dataclass(frozen=True, slots=True)
class Common:
    """The common options as they hold for a command."""

    catalog: Path | None = None
    as_of: date | None = None
    json: bool = False


def common(
    ctx: typer.Context, catalog: Path | None = None, as_of: date | None = None, json: bool = False
) -> Common:
    """What stands after the command counts; what stands before it fills the gaps."""
    before = ctx.find_object(Common) or Common()
    return Common(catalog or before.catalog, as_of or before.as_of, json or before.json)
