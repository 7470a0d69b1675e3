"""Twin of catalog/checks/notice_end.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "lifted before it was issued": (
        [("products/skerry-duo.yaml", "ended: 2026-06-01", "ended: 2025-06-01")],
        "catalog/products/skerry-duo.yaml:66:12: error: safety_notices[0].ended: 2025-06-01 lies "
        "before the notice itself (2026-05-04); correct one of the days, or write none "
        "(notice-end)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "lifted on its day": [("products/skerry-duo.yaml", "ended: 2026-06-01", "ended: 2026-05-04")],
    "not lifted": [("products/skerry-duo.yaml", "ended: 2026-06-01", "ended: none")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
