"""Twin of catalog/checks/platform_cleat.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a pattern without a cleat": (
        [("products/slate-flat.yaml", "pattern: none", "pattern: Keel")],
        "catalog/products/slate-flat.yaml:11:31: error: cleat.pattern: a platform pedal takes no "
        "cleat; write none, or correct bolts (platform-cleat)\n",
    ),
    "a height without a cleat": (
        [("products/slate-flat.yaml", "height_mm: not applicable", "height_mm: 5")],
        "catalog/products/slate-flat.yaml:11:48: error: cleat.height_mm: a platform pedal has no "
        "cleat to be high; write not applicable, or correct bolts (platform-cleat)\n",
    ),
    "a cleat without a pattern": (
        [("products/skerry-solo.yaml", "pattern: Keel", "pattern: none")],
        "catalog/products/skerry-solo.yaml:12:37: error: cleat.pattern: a three-bolt cleat has a "
        "pattern; write the maker's name for it, or unknown (platform-cleat)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "unknown bolts without a pattern": [
        ("products/skerry-solo.yaml", "bolts: three-bolt, pattern: Keel", "bolts: unknown, pattern: none")
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
