"""Twin of catalog/checks/same_name.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "the same name but for capitals": (
        [("products/skerry-solo.yaml", "name: Skerry Solo", "name: skerry duo")],
        "catalog/products/skerry-solo.yaml:3:7: error: name: Holmvik skerry duo is the name of "
        "skerry-duo too; add what tells them apart, such as the side or the year (same-name)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "the same name of another maker": [("products/slate-flat.yaml", "name: Slate", "name: Skerry Duo")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
