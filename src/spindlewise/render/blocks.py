"""Blocks: a reply as headings, paragraphs, lists and tables, before it is known where it will be read."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

Align = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the title of the whole reply."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph; `tone` marks what must not be overlooked."""

    text: str
    tone: Literal["plain", "important", "caution", "quiet"] = "plain"


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list of sentences."""

    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column's head and side."""

    title: str
    align: Align = "left"


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its caption; cells are finished text."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]


Block: TypeAlias = Heading | Paragraph | Bullets | Table
