"""Twin of catalog/checks/region_tax.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a rate that comes too late": (
        [("taxes.csv", "2025-01-01,EU", "2026-01-11,EU")],
        "catalog/prices.csv:2:23: error: region: EU has no tax rate dated on or before "
        "2026-01-10; add one for EU to taxes.csv (region-tax)\n",
    ),
    "no rate at all": (
        [("taxes.csv", "2025-01-01,JP,10,in\n", "")],
        "catalog/prices.csv:5:23: error: region: JP has no tax rate dated on or before "
        "2026-04-11; add one for JP to taxes.csv (region-tax)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a rate of the very day": [("taxes.csv", "2025-01-01,EU", "2026-01-10,EU")],
    "a rate of nothing": [("taxes.csv", "EU,20", "EU,0")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
