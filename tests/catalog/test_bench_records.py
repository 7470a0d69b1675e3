"""Observations of the bench in files of their own stand beside those of the product's file, at once."""

from datetime import date

import pytest

import small_catalog
from spindlewise.catalog.bench_files import FOLDER
from spindlewise.catalog.figure import Known, figure, seen
from spindlewise.catalog.opening import open_catalog
from spindlewise.problems import render

DUO, SOLO, FLAT = "skerry-duo", "skerry-solo", "slate-flat"
DAY = date(2026, 11, 20)


@pytest.fixture
def folder(tmp_path):
    found = small_catalog.copied(tmp_path)
    (found / FOLDER).mkdir(parents=True)
    return found


def record(product, attribute="reading_bias_pct", day="2026-11-01", value="-0.7", **more):
    lines = {"grade": "measured", "date": day, "source": "bench, five sessions", "value": value} | more
    entry = "\n      ".join(f"{key}: {text}" for key, text in lines.items())
    return (
        f"schema: spindlewise observations 1\nproduct: {product}\nobservations:\n"
        f"  {attribute}:\n    - {entry}\n      plus_minus: 0.2\n"
    )


def weighed(product, grams, day="2026-11-01"):
    return record(
        product, "weight_g", day, str(grams), basis='{count: pair, batteries: in, cleats: "off"}'
    ).replace("plus_minus: 0.2", "plus_minus: 1")


def test_a_newer_file_of_the_bench_is_what_counts_and_the_author_s_stays(folder):
    before, _ = open_catalog(folder)
    own = (folder / "products" / f"{DUO}.yaml").read_bytes()
    (folder / FOLDER / "a.yaml").write_text(weighed(DUO, 349))
    after, problems = open_catalog(folder)
    assert after is not None, render(problems, "plain")
    found = seen(after.products[DUO].observations.weight_g, DAY)
    assert (found[0].value, found[0].date, found[0].source) == (
        349,
        date(2026, 11, 1),
        "bench, five sessions",
    )
    assert after.products[DUO].observations.weight_g[:-1] == before.products[DUO].observations.weight_g
    assert (folder / "products" / f"{DUO}.yaml").read_bytes() == own
    assert seen(after.products[DUO].observations.weight_g, date(2026, 10, 31)) == seen(
        before.products[DUO].observations.weight_g, date(2026, 10, 31)
    )


def test_what_nobody_knew_is_known_then(folder):
    (folder / FOLDER / "a.yaml").write_text(record(DUO))
    found, problems = open_catalog(folder)
    assert found is not None, render(problems, "plain")
    bias = figure(found.products[DUO], "reading_bias_pct", DAY)
    assert isinstance(bias, Known)
    assert (bias.value, bias.grade) == (-0.7, "measured")


def test_two_files_of_one_product_are_both_read(folder):
    (folder / FOLDER / "b.yaml").write_text(record(DUO, value="0.9"))
    (folder / FOLDER / "a.yaml").write_text(record(DUO, value="0.1"))
    found, _ = open_catalog(folder)
    assert [o.value for o in found.products[DUO].observations.reading_bias_pct] == [0.1, 0.9]


RECORDING = "recordings:\n  - file: bench/no.csv\n    sha256: " + "a" * 64 + "\n"
MISTAKES = {
    "another product": (
        "a.yaml",
        record("nobody"),
        "a.yaml:2:10: error: product: the catalog has no 'nobody'",
    ),
    "another file": ("notes.txt", "x", "notes.txt:1:1: error: notes.txt is no file of observations"),
    "no YAML": ("a.yaml", "schema: [", "a.yaml:2:1: error: a value was expected here"),
    "a claim": (
        "a.yaml",
        record(SOLO, grade="claimed"),
        "a.yaml:5:14: error: observations.reading_bias_pct[0].grade: found 'claimed'; allowed: measured",
    ),
    "a word for a figure": (
        "a.yaml",
        record(SOLO, value="high"),
        "a.yaml:8:14: error: observations.reading_bias_pct[0].value",
    ),
    "a source that is not there": (
        "a.yaml",
        record(SOLO, source="bench/nowhere.csv"),
        "a.yaml:7:15: error: observations.reading_bias_pct[0].source: no file 'bench/nowhere.csv'",
    ),
    "a recording that is not there": (
        "a.yaml",
        record(SOLO) + RECORDING,
        "a.yaml:11:11: error: recordings[0].file: no file 'bench/no.csv'",
    ),
    "what cannot apply": (
        "a.yaml",
        record(FLAT, "running_hours", value="40", basis="{cells: two AAA}"),
        "a.yaml:5:5: error: observations.running_hours: the file of slate-flat says not applicable",
    ),
}


@pytest.mark.parametrize("mistake", MISTAKES)
def test_every_mistake_is_said_where_it_stands(folder, mistake):
    name, text, told = MISTAKES[mistake]
    (folder / FOLDER / name).write_text(text)
    catalog, problems = open_catalog(folder)
    assert catalog is None
    assert f"{folder}/{FOLDER}/{told}" in render(problems, "plain")


def test_of_a_product_that_could_not_be_read_nothing_more_is_said(folder):
    (folder / FOLDER / "a.yaml").write_text(record(SOLO))
    path = folder / "products" / f"{SOLO}.yaml"
    path.write_text(path.read_text("utf-8").replace("schema:", "skema:", 1), "utf-8")
    _, problems = open_catalog(folder)
    assert problems
    assert all(FOLDER not in problem.place.file for problem in problems if problem.place)
