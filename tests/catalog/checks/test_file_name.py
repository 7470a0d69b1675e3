"""Twin of catalog/checks/file_name.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "an id that is not the files name": (
        [
            ("products/slate-flat.yaml", "id: slate-flat", "id: slate-flats"),
            ("prices.csv", "slate-flat", "slate-flats"),
        ],
        "catalog/products/slate-flat.yaml:2:5: error: id: is slate-flats, the file is "
        "slate-flat.yaml; write id: slate-flat, or rename the file to slate-flats.yaml "
        "(file-name)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
