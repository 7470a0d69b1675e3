"""The question as options state it: a buyer file, single statements, or both."""

import re
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import open_buyer
from spindlewise.cli.options import QUESTION
from spindlewise.cli.printing import remark
from spindlewise.problems import quoted

if TYPE_CHECKING:
    from spindlewise.buyer.buyer import Buyer
    from spindlewise.catalog.catalog import Catalog

Budget = Annotated[
    str | None,
    typer.Option(metavar="AMOUNT", help="The most that may be paid, tax in.", rich_help_panel=QUESTION),
]
Region = Annotated[
    str | None,
    typer.Option(metavar="CODE", help="Where the buyer buys, for instance EU.", rich_help_panel=QUESTION),
]
Currency = Annotated[
    str | None,
    typer.Option(
        metavar="CODE", help="What the buyer pays in; the region's own without it.", rich_help_panel=QUESTION
    ),
]
Receivers = Annotated[
    list[str] | None,
    typer.Option(
        "--receiver",
        metavar="TEXT",
        help="What the buyer rides with, e.g. 'watch:ANT+,Bluetooth:channels=1:no-pairs'; once for each, the "
        "first counts. Parts after the protocols: channels=N, pairs, no-pairs, no-balance, no-strokes.",
        rich_help_panel=QUESTION,
    ),
]
Weights = Annotated[
    str | None,
    typer.Option(metavar="LIST", help="What counts how much: price=40,weight=20.", rich_help_panel=QUESTION),
]
Order = Annotated[
    str | None,
    typer.Option(
        metavar="LIST", help="What counts, most important first: price,weight.", rich_help_panel=QUESTION
    ),
]
RiderMass = Annotated[
    float | None,
    typer.Option(
        metavar="KG",
        min=1,
        max=400,
        help="The rider's weight with kit; a safety need.",
        rich_help_panel=QUESTION,
    ),
]
BothSides = Annotated[
    bool, typer.Option("--both-sides", help="Both legs must really be shown.", rich_help_panel=QUESTION)
]
Present = Annotated[
    str | None,
    typer.Option(metavar="PRODUCT", help="The pedals on the bike today.", rich_help_panel=QUESTION),
]


@dataclass(frozen=True, slots=True)
class Statements:
    """The options of a question as they were typed."""

    buyer: str | None = None
    budget: str | None = None
    region: str | None = None
    currency: str | None = None
    receivers: list[str] | None = None
    weights: str | None = None
    order: str | None = None
    rider_mass: float | None = None
    both_sides: bool = False
    present: str | None = None


def asking_buyer(stated: Statements, catalog: "Catalog") -> "Buyer":
    """The buyer that the options make; ends the command where they cannot be understood."""
    from spindlewise.answer.asking import Asked, ask
    from spindlewise.answer.stated import order_from, points_from, receiver_from

    base = open_buyer(stated.buyer, catalog) if stated.buyer else None
    try:
        asked = Asked(
            budget=amount_from(stated.budget) if stated.budget else None,
            region=_code(stated.region, 2, 8, "region"),
            currency=_code(stated.currency, 3, 3, "currency"),
            receivers=tuple(receiver_from(text) for text in stated.receivers or ()),
            points=points_from(stated.weights) if stated.weights else None,
            order=order_from(stated.order) if stated.order else None,
            rider_mass_kg=stated.rider_mass,
            both_sides=stated.both_sides,
            present_pedals=stated.present,
        )
        buyer = ask(catalog, asked, base)
    except ValueError as error:
        wrong_usage(_told(error))
    if base is None and asked.points is None and asked.order is None:
        remark("No weights are stated; usual ones stand in (--weights or --order states yours).")
    if base is None and asked.region is None:
        remark(f"No region is stated; {buyer.region} is taken (--region states yours).")
    return buyer


def amount_from(text: str) -> Decimal:
    """An amount of money as a plain decimal. Raises ValueError for anything else.

    >>> amount_from("899.90")
    Decimal('899.90')
    """
    try:
        amount = Decimal(text.strip()) if text.isascii() and "_" not in text else Decimal("NaN")
    except InvalidOperation:
        amount = Decimal("NaN")
    if not amount.is_finite() or not 0 <= amount <= 1_000_000:
        meant = re.fullmatch(r"\s*(\d+),(\d{1,2})\s*", text, re.ASCII)
        right = f"write {meant[1]}.{meant[2]}" if meant else "write a plain number such as 899.90"
        raise ValueError(f"{quoted(text)} is no amount; {right}")
    return amount


def _told(error: ValueError) -> str:
    """What was refused, without the wording of the library that refused it."""
    from pydantic import ValidationError

    if not isinstance(error, ValidationError):
        return str(error)
    return "; ".join(
        f"{'.'.join(map(str, each['loc']))}: {each['msg'].removeprefix('Value error, ')}"
        for each in error.errors(include_url=False)
    )


def _code(text: str | None, shortest: int, longest: int, what: str) -> str | None:
    if text is None:
        return None
    code = text.strip().upper()
    if not (code.isascii() and code.isalpha() and shortest <= len(code) <= longest):
        raise ValueError(f"{quoted(text)} is no {what}; write its code in letters")
    return code
