"""Twin of catalog/checks/unknown_product.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a slip of the pen": (
        [("prices.csv", "2026-03-02,skerry-solo", "2026-03-02,skery-solo")],
        "catalog/prices.csv:4:12: error: product: no product 'skery-solo'; did you mean "
        "skerry-solo? (unknown-product)\n",
    ),
    "nothing like it": (
        [("prices.csv", "2026-03-02,skerry-solo", "2026-03-02,moor-peak")],
        "catalog/prices.csv:4:12: error: product: no product 'moor-peak'; add "
        "products/moor-peak.yaml, or take the row out (unknown-product)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
