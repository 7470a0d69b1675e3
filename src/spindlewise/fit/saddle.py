"""How far the saddle goes up or down after a swap, by common practice: millimetre for millimetre."""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from typing import Literal

from spindlewise.fit.missing import MissingFigure, MissingFigures

StackBasis = Literal["axis to pedal top", "axis to sole"]
Kept = Literal["cleat", "sole", "crank"]


@dataclass(frozen=True, slots=True)
class Stack:
    """A pedal's stack height in mm and from where to where it was measured.

    `axis to sole` has the cleat in it: the part of the cleat between the pedal's top and the sole.
    """

    value_mm: float
    basis: StackBasis
    plus_minus_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Side:
    """What stands between pedal axis and foot, and between pedal axis and crank axle, on one side of a swap.

    `cleat_mm` is the part of the cleat between pedal top and sole. None means unknown, which is not zero and
    not "the same as before": for the latter see `kept` of `practice_change`.
    """

    product: str
    stack: Stack | None
    cleat_mm: float | None = None
    sole_mm: float | None = None
    crank_mm: float | None = None
    cleat_plus_minus_mm: float = 0.0
    sole_plus_minus_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class SaddleChange:
    """By how much the saddle moves along the seat tube; positive is up.

    `stack_mm`, `cleat_mm`, `sole_mm` and `crank_mm` are what each adds to `change_mm` (a longer crank adds
    less than zero). Where `basis` is `axis to sole`, the cleat is within `stack_mm`. `converted` names the
    products whose stack was brought to that basis with their cleat's height.
    """

    change_mm: float
    plus_minus_mm: float
    stack_mm: float
    cleat_mm: float
    sole_mm: float
    crank_mm: float
    basis: StackBasis
    converted: tuple[str, ...] = ()


def practice_change(
    old: Side, new: Side, kept: Collection[Kept] = ("sole", "crank")
) -> SaddleChange | MissingFigures:
    """The change of (stack + cleat + sole) less that of the crank, along the seat tube; positive is up.

    Common practice, no source: it keeps the distance from saddle to sole when the pedal is down, for a foot
    held level. `kept` names what stays on the bike or the foot: it cancels, known or not. So does the stack
    where old and new are one product. Stacks on unlike bases are compared only where the cleat's height is
    known, which turns axis to pedal top into axis to sole. Plus-minuses add in quadrature.

    Returns MissingFigures, naming each, where one is needed and unknown. Raises ValueError where a kept thing
    (or one product's stack) is given two unlike figures, and for figures that are negative or not finite.

    >>> old = Side("plain", Stack(10.0, "axis to pedal top"), crank_mm=172.5)
    >>> new = Side("tall", Stack(14.0, "axis to pedal top"), crank_mm=170.0)
    >>> change = practice_change(old, new, kept=("cleat", "sole"))
    >>> change.change_mm
    6.5
    """
    for side in (old, new):
        _refuse_bad_figures(side)
    _refuse_contradictions(old, new, kept)
    terms = _terms(old, new, kept)
    missing = tuple(MissingFigure(t.product, t.figure, t.because) for t in terms if t.value_mm is None)
    if missing:
        return MissingFigures(missing)
    unlike = _unlike(old, new)
    stack, cleat, sole, crank = (_sum_mm(terms, figure) for figure in ("stack", "cleat", "sole", "crank"))
    if unlike:
        stack, cleat = stack + cleat, 0.0
    return SaddleChange(
        change_mm=stack + cleat + sole + crank,
        plus_minus_mm=math.hypot(*(t.plus_minus_mm for t in terms)),
        stack_mm=stack,
        cleat_mm=cleat,
        sole_mm=sole,
        crank_mm=crank,
        basis="axis to sole" if unlike else _basis(new),
        converted=tuple(s.product for s in (old, new) if unlike and _basis(s) == "axis to pedal top"),
    )


@dataclass(frozen=True, slots=True)
class _Term:
    """One figure that enters the sum, with its sign, and why it has to."""

    figure: Literal["stack", "cleat", "sole", "crank"]
    product: str
    sign: int
    value_mm: float | None
    plus_minus_mm: float
    because: str


def _terms(old: Side, new: Side, kept: Collection[Kept]) -> list[_Term]:
    terms: list[_Term] = []
    for side, sign in ((old, -1), (new, 1)):
        if old.product != new.product:
            height, spread = (side.stack.value_mm, side.stack.plus_minus_mm) if side.stack else (None, 0.0)
            terms.append(_Term("stack", side.product, sign, height, spread, "the pedal is changed"))
        cleat = _cleat_term(side, sign, old, new, kept)
        if cleat:
            terms.append(cleat)
        if "sole" not in kept:
            spread = side.sole_plus_minus_mm
            terms.append(_Term("sole", side.product, sign, side.sole_mm, spread, "the shoe is changed"))
        if "crank" not in kept:
            terms.append(_Term("crank", side.product, -sign, side.crank_mm, 0.0, "the crank is changed"))
    return terms


def _cleat_term(side: Side, sign: int, old: Side, new: Side, kept: Collection[Kept]) -> _Term | None:
    if _unlike(old, new):
        if _basis(side) == "axis to sole":
            return None
        source = side
        if side.cleat_mm is None and "cleat" in kept:
            source = new if side is old else old
        because = f"it turns this stack, {_basis(side)}, into axis to sole as the other product has it"
        return _Term("cleat", side.product, sign, source.cleat_mm, source.cleat_plus_minus_mm, because)
    within_both_stacks = old.product != new.product and _basis(side) == "axis to sole"
    if "cleat" in kept or within_both_stacks:
        return None
    spread = side.cleat_plus_minus_mm
    return _Term("cleat", side.product, sign, side.cleat_mm, spread, "the cleat is changed")


def _unlike(old: Side, new: Side) -> bool:
    """Whether two different pedals' stacks are both known, on different bases."""
    if old.product == new.product or old.stack is None or new.stack is None:
        return False
    return old.stack.basis != new.stack.basis


def _basis(side: Side) -> StackBasis:
    return side.stack.basis if side.stack else "axis to pedal top"


def _sum_mm(terms: Collection[_Term], figure: str) -> float:
    # an unknown value never gets here: practice_change has returned MissingFigures by then
    return sum(t.sign * t.value_mm for t in terms if t.figure == figure and t.value_mm is not None)


def _refuse_bad_figures(side: Side) -> None:
    figures = {
        "cleat": side.cleat_mm,
        "sole": side.sole_mm,
        "crank": side.crank_mm,
        "cleat plus-minus": side.cleat_plus_minus_mm,
        "sole plus-minus": side.sole_plus_minus_mm,
    }
    if side.stack:
        figures |= {"stack": side.stack.value_mm, "stack plus-minus": side.stack.plus_minus_mm}
    for name, value in figures.items():
        if value is not None and not (math.isfinite(value) and value >= 0):
            raise ValueError(
                f"the {name} of {side.product} is {value} mm; it must be zero or more and finite"
            )


def _refuse_contradictions(old: Side, new: Side, kept: Collection[Kept]) -> None:
    pairs: dict[str, tuple[object, object]] = {
        "cleat": (old.cleat_mm, new.cleat_mm),
        "sole": (old.sole_mm, new.sole_mm),
        "crank": (old.crank_mm, new.crank_mm),
    }
    pairs = {name: pair for name, pair in pairs.items() if name in kept}
    if old.product == new.product:
        pairs["stack"] = (old.stack, new.stack)
    for name, (before, after) in pairs.items():
        if before is not None and after is not None and before != after:
            raise ValueError(f"the {name} is said to stay, yet is {before} before and {after} after")
