"""Two answers to one swap, side by side: common practice and the leg model, and how far they are apart."""

from dataclasses import dataclass

from spindlewise.answer.swap import Swap
from spindlewise.fit.saddle import SaddleChange


@dataclass(frozen=True, slots=True)
class SaddleViews:
    """Both changes in mm, positive is up; `apart_mm` is practice less leg model."""

    practice_mm: float
    leg_mm: float
    apart_mm: float


def saddle_views(swap: Swap) -> SaddleViews | None:
    """Both answers and their difference; nothing where one of them is missing."""
    if not isinstance(swap.saddle, SaddleChange) or swap.leg.change is None:
        return None
    practice, leg = swap.saddle.change_mm, swap.leg.change.saddle_mm
    return SaddleViews(practice, leg, practice - leg)
