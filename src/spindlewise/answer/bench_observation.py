"""An observation from the bench, as it goes into a product's file once an author has pasted it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

LONGEST_NOTE = 600
"""So many characters the catalog takes in one note."""


@dataclass(frozen=True, slots=True)
class BenchObservation:
    """A measured figure: product, attribute with its unit, date, source, note, value and plus-minus, rounded.

    The plus-minus is None where nobody knows it.
    The figures are rounded as the catalog states them: that is the edge at which this leaves the program.
    """

    product: str
    attribute: str
    date: date
    source: str
    note: str
    value: float
    plus_minus: float | None
    basis: Mapping[str, str]
    recordings: tuple[tuple[str, str], ...] = ()
    """The recordings that it rests on: place in the catalog, SHA-256."""


def bench_source(path: Path, catalog_folder: Path) -> str:
    """How the catalog names a file: from its own folder where it lies there, else by its name alone.

    >>> bench_source(Path("cat/bench/weighings.csv"), Path("cat"))
    'bench/weighings.csv'
    >>> bench_source(Path("elsewhere/new.csv"), Path("cat"))
    'new.csv'
    """
    whole, folder = path.resolve(), catalog_folder.resolve()
    return whole.relative_to(folder).as_posix() if whole.is_relative_to(folder) else path.name


def note_of(parts: list[str]) -> str:
    """The parts as one note; the last ones are left out where it would be too long for the catalog.

    >>> note_of(["mean of 6 readings", "no certificate"])
    'mean of 6 readings; no certificate'
    """
    note = ""
    for part in parts:
        longer = f"{note}; {part}" if note else part
        if len(longer) > LONGEST_NOTE:
            break
        note = longer
    return note
