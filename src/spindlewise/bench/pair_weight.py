"""A pair's weight from its two sides, and the same pair with and without its cells."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from spindlewise.bench.weighing import Weighing


def pair_from_sides(left: Weighing, right: Weighing) -> Weighing:
    """Give the pair's weight as left plus right, with the uncertainty of the sum.

    Repeats and steps add as squares. What one scale's calibration is off, both sides carry alike: on the same
    scale these add plainly (JCGM 100:2008, 5.2.2), on two scales as squares.
    Raises ValueError where a side is not one pedal, or where batteries, cleats or coverage differ.

    >>> from spindlewise.bench.weighing import Scale, WeightBasis, weigh
    >>> scale, one = Scale("counter scale", 1.0), WeightBasis("one pedal", "in", "off")
    >>> left, right = (weigh([grams] * 3, scale=scale, basis=one) for grams in (185, 186))
    >>> pair_from_sides(left, right).mean_g
    371.0
    """
    for side in (left, right):
        if side.basis.count != "one pedal":
            raise ValueError(f"a side weighed as {side.basis.count!r}; each side is 'one pedal'")
    if left.basis != right.basis or left.coverage != right.coverage:
        raise ValueError(
            f"sides weighed as {left.basis} and {right.basis}, coverage {left.coverage!r} and"
            f" {right.coverage!r}; they must be the same"
        )
    parts = [
        replace(part, cause=f"{name}, {part.cause}")
        for name, side in (("left", left), ("right", right))
        for part in side.components
        if part.cause != "calibration"
    ]
    calibrations = [part for side in (left, right) for part in side.components if part.cause == "calibration"]
    if left.scale == right.scale and calibrations:
        calibrations = [replace(calibrations[0], standard_g=sum(part.standard_g for part in calibrations))]
    missing = dict.fromkeys(
        what if what == "calibration" else f"{name}, {what}"
        for name, side in (("left", left), ("right", right))
        for what in side.left_out
    )
    scale = left.scale if left.scale == right.scale else f"{left.scale}, {right.scale}"
    return Weighing(
        mean_g=left.mean_g + right.mean_g,
        basis=replace(left.basis, count="pair"),
        scale=scale,
        count=min(left.count, right.count),
        components=(*parts, *calibrations),
        coverage=left.coverage,
        left_out=tuple(missing),
    )


@dataclass(frozen=True, slots=True)
class CellsCheck:
    """Whether two weighings are of one thing, once with and once without its cells.

    `seen_g` is what the cells weigh by difference, `expected_g` by their number; they may differ by
    `plus_minus_g`.
    """

    one_thing: bool
    seen_g: float
    expected_g: float
    plus_minus_g: float


def same_with_cells(
    with_cells: Weighing, without_cells: Weighing, *, cells: int, cell_g: float, cell_plus_minus_g: float
) -> CellsCheck:
    """Say whether the difference of two weighings is what `cells` cells weigh, within all uncertainties.

    |with - without - n cell_g| <= sqrt(U_with^2 + U_without^2 + (n cell_plus_minus_g)^2): cells of one make
    are heavy or light together. What one scale's calibration is off cancels here and is yet counted, which
    errs on the side of one thing. Raises ValueError where batteries are not in and out, count or cleats
    differ, or the cells are none.

    >>> from spindlewise.bench.weighing import Scale, WeightBasis, weigh
    >>> scale = Scale("counter scale", 1.0)
    >>> full, bare = (weigh([g] * 3, scale=scale, basis=WeightBasis("pair", b, "off")) for g, b in
    ...               ((371, "in"), (348, "out")))
    >>> same_with_cells(full, bare, cells=2, cell_g=11.5, cell_plus_minus_g=0.3).one_thing
    True
    """
    full, bare = with_cells.basis, without_cells.basis
    if (full.batteries, bare.batteries) != ("in", "out") or replace(full, batteries="out") != bare:
        raise ValueError(
            f"weighings of {full} and {bare}; the first has batteries in, the second out, and all"
            " else is the same"
        )
    if cells < 1 or not cell_g > 0.0 or not cell_plus_minus_g >= 0.0:
        raise ValueError(f"{cells} cells of {cell_g} -/+ {cell_plus_minus_g} g; at least one, above 0 g")
    seen, expected = with_cells.mean_g - without_cells.mean_g, cells * cell_g
    reach = math.hypot(with_cells.expanded_g, without_cells.expanded_g, cells * cell_plus_minus_g)
    return CellsCheck(abs(seen - expected) <= reach, seen, expected, reach)
