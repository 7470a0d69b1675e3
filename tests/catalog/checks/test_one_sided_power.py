"""Twin of catalog/checks/one_sided_power.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "both sides summed": (
        [("products/skerry-solo.yaml", "how: one side doubled", "how: both sides")],
        "catalog/products/skerry-solo.yaml:19:28: error: links[0].carries[0].how: power both "
        "sides, yet the product measures the left side only; correct this, or sides "
        "(one-sided-power)\n",
    ),
    "two channels": (
        [("products/skerry-solo.yaml", "how: one side doubled", "how: two channels")],
        "catalog/products/skerry-solo.yaml:19:28: error: links[0].carries[0].how: power two "
        "channels, yet the product measures the left side only; correct this, or sides "
        "(one-sided-power)\n",
    ),
    "balance": (
        [("products/skerry-solo.yaml", "how: absent", "how: carried")],
        "catalog/products/skerry-solo.yaml:20:30: error: links[0].carries[1].how: balance "
        "carried, yet the product measures the left side only; correct this, or sides "
        "(one-sided-power)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "one side alone is stated as unknown": [
        ("products/skerry-solo.yaml", "how: one side doubled", "how: unknown")
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
