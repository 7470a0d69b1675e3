"""Twin of catalog/checks/odd_date.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, copied, opened, said
from spindlewise.catalog.bench_files import FOLDER
from spindlewise.problems import render

TOLD: dict[str, tuple[list[Change], str]] = {
    "before any power pedal": (
        [("products/slate-flat.yaml", "since: 2024-01-05", "since: 1924-01-05")],
        "catalog/products/slate-flat.yaml:10:29: error: statuses[0].since: found 1924-01-05; "
        "write a day from 2000-01-01 to 2028-11-21 (odd-date)\n",
    ),
    "a year with its digits exchanged": (
        [("products/skerry-duo.yaml", "date: 2026-02-03", "date: 2206-02-03")],
        "catalog/products/skerry-duo.yaml:42:13: error: observations.weight_g[1].date: found "
        "2206-02-03; write a day from 2000-01-01 to 2028-11-21 (odd-date)\n",
    ),
    "in the price log": (
        [("prices.csv", "2026-03-02,skerry-solo", "2062-03-02,skerry-solo")],
        "catalog/prices.csv:4:1: error: date: found 2062-03-02; write a day from 2000-01-01 to "
        "2028-11-21 (odd-date)\n",
    ),
    "where the catalog is read as of today": (
        [
            ("catalog.yaml", "as_of: 2026-11-20", "as_of: today"),
            ("products/skerry-duo.yaml", "date: 2026-02-03", "date: 2206-02-03"),
        ],
        "catalog/products/skerry-duo.yaml:42:13: error: observations.weight_g[1].date: found "
        "2206-02-03; write a day from 2000-01-01 to 2099-12-31 (odd-date)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a little ahead": [("products/skerry-duo.yaml", "date: 2026-02-03", "date: 2027-02-03")],
    "far ahead but read as of today": [
        ("catalog.yaml", "as_of: 2026-11-20", "as_of: today"),
        ("products/skerry-duo.yaml", "date: 2026-02-03", "date: 2096-02-03"),
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""


def test_a_record_of_the_bench_is_looked_at_too(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    (folder / FOLDER).mkdir(parents=True)
    (folder / FOLDER / "a.yaml").write_text(
        "schema: spindlewise observations 1\nproduct: skerry-duo\nobservations:\n"
        "  reading_bias_pct:\n    - grade: measured\n      date: 2062-10-01\n"
        "      source: bench, five sessions\n      value: -0.7\n      plus_minus: 0.2\n"
        "  reading_spread_pct:\n    - grade: measured\n      date: 2026-10-01\n"
        "      source: bench, five sessions\n      value: 0.9\n      plus_minus: 0.2\n"
    )
    assert render(opened(tmp_path)[1], "plain") == (
        "catalog/bench/observations/a.yaml:6:13: error: observations.reading_bias_pct[0].date: found "
        "2062-10-01; write a day from 2000-01-01 to 2028-11-21 (odd-date)\n"
    )
