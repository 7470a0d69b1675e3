"""What each weighing comes to in words, on the demo's own readings in the small catalog."""

from dataclasses import replace
from datetime import date
from functools import cache

import pytest

from command_line import SMALL
from small_answers import desk, names
from spindlewise.answer.bench_weigh import WeighReport, weigh_report
from spindlewise.bench.weighing import WeightBasis
from spindlewise.catalog.weighing_row import read_weighings
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Table
from spindlewise.render.words_weigh import (
    cells_sentence,
    claim_sentence,
    left_out_sentences,
    weigh_blocks,
    weighed_text,
)


@cache
def report() -> WeighReport:
    rows, problems = read_weighings(SMALL / "bench" / "weighings.csv", "w.csv")
    wanted = [row for row in rows if row.product in desk().catalog.products]
    return weigh_report(wanted, desk().catalog, desk().day, problems)


def sentence(product: str, batteries: str = "in", cleats: str = "off") -> str:
    basis = WeightBasis("pair", batteries, cleats)
    one = next(o for o in report().weighed if o.product == product and o.weighing.basis == basis)
    return claim_sentence(one, names())


def test_each_verdict_has_its_sentence_with_the_numbers() -> None:
    assert sentence("pellamund-orrestad") == (
        "Pellamund Orrestad, 2025-12-01, pair, batteries in, cleats off: proved over the claim of 398.0 g "
        "(Pellamund, product card of May 2025): 5.8 g over, +1.5 %, and all of the interval lies above it."
    )
    assert "cannot tell whether the claim of 346.0 g" in sentence("brellowick-ferrowen-2")
    assert "0.2 g under, -0.1 %, and the interval lies on both sides" in sentence("brellowick-ferrowen-2")


def test_unlike_bases_are_named_and_nothing_is_reckoned() -> None:
    assert sentence("pellamund-orrestad", "out").endswith(
        "not comparable with the claim of 398.0 g (Pellamund, product card of May 2025), "
        "which is on another basis or does not say: batteries."
    )


def test_the_cells_are_recognised() -> None:
    (said,) = (cells_sentence(pair, names()) for pair in report().cells)
    assert said == (
        "Pellamund Orrestad, pair, cleats off: one thing, weighed with its cells and without: the cells make "
        "23.0 g by difference, 23.0 g by number (2 cells of 11.5 g, give or take 2 g)."
    )


def test_what_is_not_in_the_plus_minus_is_said() -> None:
    said = left_out_sentences(report())
    assert said[0] == "The calibration of counter scale A: no certificate is stated."
    assert said[-1].startswith("How far another pair")


def test_a_row_for_each_weighing_and_a_tenth_of_a_gram() -> None:
    table = next(b for b in weigh_blocks(desk().catalog, report(), desk().day) if isinstance(b, Table))
    assert len(table.rows) == len(report().weighed)
    weighed = ("Pellamund Orrestad", "403.8 ± 0.9 g", "398.0 g", "proved over")
    assert (*weighed, "pair", "in", "off", "2025-12-01", "6") in table.rows
    assert "none" in {row[5] for row in table.rows}
    assert "As of 2026-11-20" in as_text(weigh_blocks(desk().catalog, report(), date(2026, 11, 20)))


@pytest.mark.parametrize(
    ("what", "batteries", "cleats", "sides", "words"),
    [
        ("one pedal", "in", "on", False, "one pedal, batteries in, cleats on"),
        ("left", "in", "off", False, "left pedal, batteries in, cleats off"),
        ("pair", "not applicable", "off", False, "pair, no batteries, cleats off"),
        ("pair", "out", "off", True, "left plus right, batteries out, cleats off"),
    ],
)
def test_what_lay_on_the_scales(what: str, batteries: str, cleats: str, sides: bool, words: str) -> None:
    some = report().weighed[0]
    count = "pair" if what == "pair" else "one pedal"
    weighing = replace(some.weighing, basis=WeightBasis(count, batteries, cleats))
    assert weighed_text(replace(some, what=what, weighing=weighing, sides=sides)) == words
