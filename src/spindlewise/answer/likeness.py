"""In what buyers are alike: those alike in one respect share what is worked out for it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Likeness:
    """One number for each respect; buyers with the same number are alike in it, at one desk."""

    reception: int
    """Receivers, and what of the rider bears on a reading."""
    needs: int
    riding: int
    """Region and currency, and what of the riding bears on the cost of owning."""
