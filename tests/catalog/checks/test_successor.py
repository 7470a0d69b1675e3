"""Twin of catalog/checks/successor.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "no successor named": (
        [("products/skerry-solo.yaml", "superseded_by: skerry-duo, ", "")],
        "catalog/products/skerry-solo.yaml:11:13: error: statuses[1].state: what is superseded "
        "has a successor; add superseded_by: its id, or unknown (successor)\n",
    ),
    "its own successor": (
        [("products/skerry-solo.yaml", "superseded_by: skerry-duo", "superseded_by: skerry-solo")],
        "catalog/products/skerry-solo.yaml:11:59: error: statuses[1].superseded_by: a product "
        "cannot take its own place; name another (successor)\n",
    ),
    "a slip of the pen": (
        [("products/skerry-solo.yaml", "superseded_by: skerry-duo", "superseded_by: skery-duo")],
        "catalog/products/skerry-solo.yaml:11:59: error: statuses[1].superseded_by: no product "
        "'skery-duo'; did you mean skerry-duo? (successor)\n",
    ),
    "nothing like it": (
        [("products/skerry-solo.yaml", "superseded_by: skerry-duo", "superseded_by: moor-peak")],
        "catalog/products/skerry-solo.yaml:11:59: error: statuses[1].superseded_by: no product "
        "'moor-peak'; write the id of a product of this catalog, or unknown (successor)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a successor that nobody knows": [
        ("products/skerry-solo.yaml", "superseded_by: skerry-duo", "superseded_by: unknown")
    ],
    "a successor of what is sold off": [
        ("products/skerry-solo.yaml", "state: superseded", "state: clearance")
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
