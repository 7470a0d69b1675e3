"""The days on which a product's record says something new: between two of them it reads the same."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from datetime import date
from typing import Any

from spindlewise.catalog.product import Product


def product_days(product: Product) -> tuple[date, ...]:
    """Every date that stands in a product's record, in order."""
    return tuple(sorted(set(_dates(product.model_dump()))))


def stretch(days: tuple[date, ...], day: date) -> tuple[int, int]:
    """How many of the days lie before `day`, and how many by its end.

    On two days with the same two numbers every entry that holds from its date, or to its date, holds alike.

    >>> days = date(2026, 3, 1), date(2026, 5, 1)
    >>> stretch(days, date(2026, 4, 1)) == stretch(days, date(2026, 4, 30))
    True
    >>> stretch(days, date(2026, 4, 30)) == stretch(days, date(2026, 5, 1))
    False
    """
    return bisect_left(days, day), bisect_right(days, day)


def _dates(part: Any) -> Iterator[date]:
    if isinstance(part, date):
        yield part
    inner: Iterable[Any] = ()
    if isinstance(part, dict):
        inner = part.values()
    elif isinstance(part, list | tuple):
        inner = part
    for each in inner:
        yield from _dates(each)
