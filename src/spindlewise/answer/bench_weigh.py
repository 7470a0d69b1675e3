"""What was weighed: mean, doubt and the verdict on the claim, for each product, day and basis."""

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from spindlewise.answer.bench_claim import Held, basis_of, hold_to_claim
from spindlewise.answer.bench_observation import BenchObservation, note_of
from spindlewise.bench.pair_weight import CellsCheck, pair_from_sides, same_with_cells
from spindlewise.bench.weighing import Scale, Weighing, WeightBasis, rounded_up, weigh
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.weighing_row import WeighingRow
from spindlewise.problems import Problem, nearest, quoted
from spindlewise.units import grams_text, rounded

CELL_SPREAD = 0.05
"""By how much of its weight a cell may differ from what the catalog states. Common practice, no source."""

Key = tuple[str, date, str, str, str, str]


@dataclass(frozen=True, slots=True)
class Weighed:
    """One thing on one scale on one day; `sides` says that the pair is the sum of its sides."""

    product: str
    date: date
    what: str
    weighing: Weighing
    lines: tuple[str, ...]
    held: Held | None
    sides: bool = False


@dataclass(frozen=True, slots=True)
class OneThing:
    """Two weighings, with cells and without, and whether their difference is what the cells weigh.

    `check` is None where the catalog does not know the cells, and `because` says what is missing.
    """

    with_cells: Weighed
    without_cells: Weighed
    check: CellsCheck | None
    because: str


@dataclass(frozen=True, slots=True)
class WeighReport:
    """All that was weighed, in order of product and day, pairs first; `problems` includes the rows' own."""

    weighed: tuple[Weighed, ...]
    cells: tuple[OneThing, ...]
    problems: tuple[Problem, ...]


def weigh_report(
    rows: Sequence[WeighingRow], catalog: Catalog, day: date, problems: Sequence[Problem] = ()
) -> WeighReport:
    """Weigh all rows by group; claims are those of the catalog, seen by `day`.

    Readings of one product, day, basis and scale are one weighing. A tare in any of its rows holds for all of
    them: each reading then has what held the pedals on the scale too. Left and right of one day, basis and
    scale give the pair. Rows dated after `day` are not seen.
    """
    found = list(problems)
    groups: dict[Key, list[WeighingRow]] = {}
    for row in rows:
        if row.date <= day:
            groups.setdefault(_key(row), []).append(row)
    weighed = []
    for key in sorted(groups):
        one = _one(groups[key], catalog, day, found)
        if one is not None:
            weighed.append(one)
    weighed += _sums(weighed, catalog, day)
    weighed.sort(key=_order)
    for product in sorted({one.product for one in weighed} - set(catalog.products)):
        found.append(_stranger(product, rows, catalog))
    return WeighReport(tuple(weighed), tuple(_cells(weighed, catalog)), tuple(found))


def weight_observation(one: Weighed, source: str) -> BenchObservation | None:
    """The catalog's observation, to the whole gram, plus-minus rounded up; None for one reading or one side.

    One reading says nothing of how readings scatter, and a left pedal alone is on no basis that the catalog
    knows. `source` is the file as the catalog names it. The note has the SHA-256 of the lines it rests on,
    which stays true while the file grows.
    """
    if one.what in ("left", "right") or one.weighing.count < 2:
        return None
    whole = hashlib.sha256("".join(f"{line}\n" for line in one.lines).encode()).hexdigest()
    left_out = [f"not in the plus-minus: {what}" for what in one.weighing.left_out]
    summed = ["sum of left and right"] if one.sides else []
    readings = f"{one.weighing.count} readings{' a side' if one.sides else ''} on {one.weighing.scale}"
    return BenchObservation(
        product=one.product,
        attribute="weight_g",
        date=one.date,
        source=f"{source}, {one.date.isoformat()}",
        note=note_of([*summed, readings, f"SHA-256 of their lines {whole}", *left_out]),
        value=rounded(one.weighing.mean_g),
        plus_minus=rounded_up(one.weighing.expanded_g),
        basis=basis_of(one.weighing),
    )


def _key(row: WeighingRow) -> Key:
    return (row.product, row.date, row.what, row.batteries, row.cleats, row.scale)


def _one(rows: list[WeighingRow], catalog: Catalog, day: date, problems: list[Problem]) -> Weighed | None:
    first = rows[0]
    for row in rows:
        for name in ("resolution_g", "correction_g", "calibration_g"):
            if getattr(row, name) != getattr(first, name):
                told = f"{name}: not the same as in line {first.place.line}, on the same scale and day"
                tip = "write what the scale's certificate says in each line, or give the scale another name"
                problems.append(Problem(row.place, "error", "scale-changes", told, tip, name))
                return None
    tare = [row.tare_g for row in rows if row.tare_g is not None]
    if tare and min(row.reading_g for row in rows) <= max(tare):
        told = "reading_g: not more than the tare, so nothing lay on the scale"
        problems.append(Problem(first.place, "error", "tare-too-heavy", told, "check both", "reading_g"))
        return None
    weighing = weigh(
        [row.reading_g for row in rows],
        scale=Scale(first.scale, first.resolution_g, first.correction_g or 0.0, first.calibration_g),
        basis=WeightBasis("pair" if first.what == "pair" else "one pedal", first.batteries, first.cleats),
        tare_readings_g=tare,
    )
    held = hold_to_claim(weighing, catalog.products.get(first.product), day)
    lines = tuple(row.text for row in rows)
    return Weighed(first.product, first.date, first.what, weighing, lines, held)


def _sums(weighed: Sequence[Weighed], catalog: Catalog, day: date) -> list[Weighed]:
    """The pairs that were weighed as two sides."""
    found = []
    for left in weighed:
        for right in weighed:
            alike = (left.product, left.date, left.weighing.basis, left.weighing.scale) == (
                right.product,
                right.date,
                right.weighing.basis,
                right.weighing.scale,
            )
            if alike and (left.what, right.what) == ("left", "right"):
                pair = pair_from_sides(left.weighing, right.weighing)
                held = hold_to_claim(pair, catalog.products.get(left.product), day)
                lines = (*left.lines, *right.lines)
                found.append(Weighed(left.product, left.date, "pair", pair, lines, held, sides=True))
    return found


def _cells(weighed: Sequence[Weighed], catalog: Catalog) -> list[OneThing]:
    """Each weighing without cells beside the nearest in time with them, all else alike."""
    found = []
    for bare in weighed:
        basis = bare.weighing.basis
        full = [
            one
            for one in weighed
            if (one.product, one.what) == (bare.product, bare.what)
            and (basis.batteries, one.weighing.basis.batteries) == ("out", "in")
            and one.weighing.basis.cleats == basis.cleats
        ]
        if full:
            nearest_full = min(full, key=lambda one: (abs((one.date - bare.date).days), one.date))
            found.append(_one_thing(nearest_full, bare, catalog))
    return found


def _one_thing(full: Weighed, bare: Weighed, catalog: Catalog) -> OneThing:
    product = catalog.products.get(full.product)
    battery = None if product is None or isinstance(product.battery, str) else product.battery
    if battery is None or isinstance(battery.count, str) or isinstance(battery.cell_weight_g, str):
        return OneThing(
            full, bare, None, "the catalog does not say how many cells there are and of what weight"
        )
    count, rest = battery.count, 0
    if full.weighing.basis.count == "one pedal":
        count, rest = divmod(battery.count, 2)
    if rest or not count:
        return OneThing(full, bare, None, f"{battery.count} cells do not divide by two pedals")
    each = battery.cell_weight_g
    check = same_with_cells(
        full.weighing, bare.weighing, cells=count, cell_g=each, cell_plus_minus_g=CELL_SPREAD * each
    )
    cells = f"{count} cell{'' if count == 1 else 's'} of {each:g} g"
    return OneThing(full, bare, check, f"{cells}, give or take {grams_text(check.plus_minus_g)}")


def _stranger(product: str, rows: Sequence[WeighingRow], catalog: Catalog) -> Problem:
    place = next(row.place for row in rows if row.product == product)
    near = nearest(product, catalog.products)
    tip = f"did you mean {near}?" if near else "there is no claim to hold it to"
    told = f"product: the catalog has no {quoted(product)}"
    return Problem(place, "warning", "unknown-product", told, tip, "product")


def _order(one: Weighed) -> tuple[str, date, bool, str, bool, str, str, str]:
    """By product and day, pairs first, and a pair that was weighed as two sides after those that were not."""
    basis = one.weighing.basis
    rest = (basis.batteries, basis.cleats, one.weighing.scale)
    return (one.product, one.date, one.what != "pair", one.what, one.sides, *rest)
