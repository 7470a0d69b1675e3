"""Twin of catalog/checks/plain_pedal_figures.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "running hours": (
        [
            (
                "products/slate-flat.yaml",
                "running_hours: not applicable",
                "running_hours: [{grade: claimed, date: 2024-01-05, source: s, value: 9, basis: {cells: c}}]",
            )
        ],
        "catalog/products/slate-flat.yaml:31:18: error: observations.running_hours: a plain "
        "pedal measures nothing and has no batteries; write not applicable (plain-pedal-figures)\n",
    ),
    "a bias": (
        [
            (
                "products/slate-flat.yaml",
                "ingress: not applicable",
                "reading_bias_pct: unknown\n  ingress: unknown",
            ),
            (
                "products/slate-flat.yaml",
                "bias_pct: unknown",
                "bias_pct: [{grade: claimed, date: 2024-01-05, source: s, value: 1}]",
            ),
        ],
        "catalog/products/slate-flat.yaml:33:21: error: observations.reading_bias_pct: a plain "
        "pedal measures nothing and has no batteries; write not applicable (plain-pedal-figures)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "unknown says nothing": [
        ("products/slate-flat.yaml", "running_hours: not applicable", "running_hours: unknown")
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
