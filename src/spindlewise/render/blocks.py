"""Blocks: a reply as headings, paragraphs, lists and tables, before it is known where it will be read."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, TypeAlias

Align = Literal["left", "right"]
Tone = Literal["plain", "important", "caution", "quiet"]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the title of the whole reply."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph; `tone` marks what must not be overlooked."""

    text: str
    tone: Tone = "plain"


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list of sentences."""

    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column's head and side; where room is short, the column of the highest `spare` goes first.

    A column of `spare` 0 always stays.
    """

    title: str
    align: Align = "left"
    spare: int = 0
    is_name: bool = False
    """Whether the title is a name, which keeps its capital within a sentence."""
    wraps: bool = False
    """Whether its cells may go on in a further line where room is short."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its caption; cells are finished text."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]


Block: TypeAlias = Heading | Paragraph | Bullets | Table


@dataclass(frozen=True, slots=True)
class Section:
    """A part of a reply under one name; one that has `keep` may never be cut, however short the reply."""

    name: str
    blocks: tuple[Block, ...]
    keep: bool = False


def blocks_of(sections: Iterable[Section]) -> tuple[Block, ...]:
    """All blocks of the sections, in their order."""
    return tuple(block for section in sections for block in section.blocks)
