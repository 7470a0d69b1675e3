"""Twin of catalog/checks/bench_file.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a slip of the pen": (
        [("products/skerry-duo.yaml", "bench/weighings.csv, 2026-02-03", "bench/weighing.csv, 2026-02-03")],
        "catalog/products/skerry-duo.yaml:43:15: error: observations.weight_g[1].source: no file "
        "'bench/weighing.csv'; did you mean bench/weighings.csv? (bench-file)\n",
    ),
    "nothing like it": (
        [("products/slate-flat.yaml", "bench/weighings.csv", "bench/../../elsewhere")],
        "catalog/products/slate-flat.yaml:22:15: error: observations.weight_g[0].source: no file "
        "'bench/../../elsewhere'; add the file, or write where the figure comes from "
        "(bench-file)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a source in words": [
        ("products/skerry-duo.yaml", "bench/weighings.csv, 2026-02-03", "kitchen scales, 2026-02-03")
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
