"""What would have to be known before the change on the bike can be told."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class MissingFigure:
    """One figure of one product that nobody has given, and why it is needed."""

    product: str
    figure: str
    because: str


@dataclass(frozen=True, slots=True)
class MissingFigures:
    """The answer in place of a number: every figure that is missing, in a fixed order; never empty."""

    missing: tuple[MissingFigure, ...]
