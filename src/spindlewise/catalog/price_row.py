"""One line of the price log: what a product was offered for, where, by whom, and until when."""

import csv
import io
from dataclasses import dataclass
from datetime import date as Day  # noqa: N812  # a field may be called date without hiding its type
from decimal import Decimal
from typing import Literal

Tax = Literal["in", "out"]
Kind = Literal["list", "street", "offer", "clearance"]
TAXES: tuple[Tax, ...] = ("in", "out")
KINDS: tuple[Kind, ...] = ("list", "street", "offer", "clearance")
"""The maker's list price, a shop's usual price, a price for a time, and the price of what is sold off."""

HEADER = ("date", "product", "region", "currency", "amount", "tax", "kind", "seller", "valid_until", "source")


@dataclass(frozen=True, slots=True)
class PriceRow:
    """A dated price observation; `line` is where it stands in the log (0 for one not yet written)."""

    line: int
    date: Day
    product: str
    region: str
    currency: str
    amount: Decimal
    tax: Tax
    kind: Kind
    seller: str
    valid_until: Day | None
    source: str

    def in_force(self, day: Day) -> bool:
        """Whether the price was seen by the day and has not expired on it."""
        return self.date <= day and (self.valid_until is None or self.valid_until >= day)

    def cells(self) -> tuple[str, ...]:
        """The row as the log's text fields."""
        until = self.valid_until.isoformat() if self.valid_until else ""
        return (
            self.date.isoformat(),
            self.product,
            self.region,
            self.currency,
            f"{self.amount:f}",
            self.tax,
            self.kind,
            self.seller,
            until,
            self.source,
        )


def row_line(price: PriceRow) -> str:
    """The row as one line of the log, with its end (RFC 4180 quoting, a line feed as the end)."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerow(price.cells())
    return text.getvalue()
