"""The bench's weighings in words: what each thing weighs, and whether the claim holds."""

from datetime import date

from spindlewise.answer.bench_claim import Held
from spindlewise.answer.bench_weigh import OneThing, Weighed, WeighReport
from spindlewise.bench.weighing import rounded_up
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.naming import Naming, listed, naming
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.units import number_text, percent_text

PARTS = {"count": "how many pedals lay on the scales", "batteries": "batteries", "cleats": "cleats"}


def weigh_blocks(catalog: Catalog, report: WeighReport, day: date) -> tuple[Block, ...]:
    """The whole report: a table, a sentence for each claim, the cells, and what is not in the plus-minus."""
    names = naming(catalog)
    blocks: list[Block] = [
        Heading("What was weighed", 1),
        Paragraph(
            f"As of {day.isoformat()}. Plus-minus is the expanded uncertainty, k = 2, to the tenth of a gram "
            "and rounded up. A sum is left plus right.",
            "quiet",
        ),
        _table(report, names),
        Heading("Do the claims hold?"),
        Bullets(tuple(claim_sentence(one, names) for one in report.weighed)),
    ]
    if report.cells:
        blocks += [
            Heading("With cells and without"),
            Bullets(tuple(cells_sentence(pair, names) for pair in report.cells)),
        ]
    blocks += [Heading("What the plus-minus leaves out"), Bullets(tuple(left_out_sentences(report)))]
    return (*blocks, *notice_of_invention(catalog))


def claim_sentence(one: Weighed, names: Naming) -> str:
    """The verdict on the claim in one sentence, by the rule that gives the doubt to nobody (ISO 14253-1)."""
    lead = f"{names.product(one.product)}, {one.date.isoformat()}, {weighed_text(one)}:"
    held = one.held
    if held is None:
        return f"{lead} nobody has claimed a weight."
    claim = f"the claim of {_grams(held.claimed_g)}"
    if held.tolerance_g:
        claim += f" ± {_grams(held.tolerance_g)}"
    claim += f" ({held.source})"
    verdict = held.verdict
    if verdict.difference is None or verdict.difference_pct is None:
        unlike = listed(PARTS[part] for part in verdict.unlike)
        return f"{lead} not comparable with {claim}, which is on another basis or does not say: {unlike}."
    by = (
        f"{_grams(abs(verdict.difference))} {'over' if verdict.difference > 0 else 'under'}, "
        f"{percent_text(verdict.difference_pct, signed=True)}"
    )
    return f"{lead} {VERDICTS[verdict.verdict].format(claim=claim, by=by)}"


VERDICTS = {
    "proved over": "proved over {claim}: {by}, and all of the interval lies above it.",
    "proved within": "proved within {claim}: {by}, and all of the interval lies within it.",
    "proved under": "proved under {claim}: {by}.",
    "cannot tell": "cannot tell whether {claim} holds: {by}, and the interval lies on both sides of it.",
}


def cells_sentence(pair: OneThing, names: Naming) -> str:
    """Whether two weighings are of one thing, once with and once without its cells."""
    lead = (
        f"{names.product(pair.with_cells.product)}, {pair.with_cells.what}, cleats "
        f"{pair.with_cells.weighing.basis.cleats}:"
    )
    check = pair.check
    if check is None:
        return f"{lead} weighed with cells and without; {pair.because}, so nothing is said of the difference."
    seen = f"the cells make {_grams(check.seen_g)} by difference, {_grams(check.expected_g)} by number"
    if check.one_thing:
        return f"{lead} one thing, weighed with its cells and without: {seen} ({pair.because})."
    return f"{lead} not one thing with and without its cells, or not these cells: {seen} ({pair.because})."


def left_out_sentences(report: WeighReport) -> list[str]:
    """What nobody could put into the plus-minus, named once for each scale."""
    scales = sorted({o.weighing.scale for o in report.weighed if "calibration" in o.weighing.left_out})
    said = []
    if scales:
        said.append(f"The calibration of {listed(scales)}: no certificate is stated.")
    single = sum(any("repeats" in what for what in one.weighing.left_out) for one in report.weighed)
    if single:
        said.append(f"How readings repeat, where there was only one: {single} of {len(report.weighed)}.")
    return [*said, "How far another pair of the same product lies from the one that was weighed."]


def weighed_text(one: Weighed) -> str:
    """What lay on the scales, or was added up from two sides: 'left pedal, batteries in, cleats off'."""
    basis = one.weighing.basis
    thing = f"{one.what} pedal" if one.what in ("left", "right") else one.what
    cells = "no batteries" if basis.batteries == "not applicable" else f"batteries {basis.batteries}"
    return f"{'left plus right' if one.sides else thing}, {cells}, cleats {basis.cleats}"


def _table(report: WeighReport, names: Naming) -> Table:
    columns = (
        Column("Product"),
        Column("Mean", "right"),
        Column("Claimed", "right", spare=1),
        Column("Verdict"),
        Column("Pedals"),
        Column("Cells"),
        Column("Cleats"),
        Column("Weighed", spare=2),
        Column("Readings", "right", spare=3),
    )
    rows = tuple(_row(one, names) for one in report.weighed)
    return Table("Each thing on one scale and day", columns, rows)


def _row(one: Weighed, names: Naming) -> tuple[str, ...]:
    basis = one.weighing.basis
    mean = number_text(one.weighing.mean_g, 1)
    return (
        names.product(one.product),
        f"{mean} ± {_grams(rounded_up(one.weighing.expanded_g, 0.1))}",
        "" if one.held is None else _grams(one.held.claimed_g),
        _verdict(one.held),
        "sum" if one.sides else one.what.removesuffix(" pedal"),
        "none" if basis.batteries == "not applicable" else basis.batteries,
        basis.cleats,
        one.date.isoformat(),
        str(one.weighing.count),
    )


def _verdict(held: Held | None) -> str:
    return "no claim" if held is None else held.verdict.verdict


def _grams(value: float) -> str:
    return f"{number_text(value, 1)} g"
