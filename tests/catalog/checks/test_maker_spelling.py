"""Twin of catalog/checks/maker_spelling.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "capitals and marks": (
        [("products/slate-flat.yaml", "maker: Tollmere", "maker: HOLM-VIK")],
        "catalog/products/slate-flat.yaml:4:8: error: maker: is 'HOLM-VIK', elsewhere 'Holmvik'; "
        "write Holmvik in all files (maker-spelling)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "another maker altogether": [("products/slate-flat.yaml", "maker: Tollmere", "maker: Holmviken")],
    "a name of marks only": [("products/slate-flat.yaml", "maker: Tollmere", 'maker: "+"')],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
