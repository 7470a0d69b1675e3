"""Twin of catalog/checks/family_maker.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "two makers in one family": (
        [("products/skerry-solo.yaml", "maker: Holmvik", "maker: Tollmere")],
        "catalog/products/skerry-solo.yaml:5:9: error: family: is skerry, whose skerry-duo has "
        "maker Holmvik, not Tollmere; write the same maker in both, or give this product another "
        "family or none (family-maker)\n",
    ),
    "two kinds in one family": (
        [
            ("products/slate-flat.yaml", "family: none", "family: skerry"),
            ("products/slate-flat.yaml", "maker: Tollmere", "maker: Holmvik"),
        ],
        "catalog/products/slate-flat.yaml:5:9: error: family: is skerry, whose skerry-duo has "
        "kind power pedal, not plain pedal; write the same kind in both, or give this product "
        "another family or none (family-maker)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "products of no family share nothing": [
        ("products/skerry-solo.yaml", "family: skerry", "family: none"),
        ("products/skerry-solo.yaml", "maker: Holmvik", "maker: Tollmere"),
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
