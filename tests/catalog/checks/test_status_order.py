"""Twin of catalog/checks/status_order.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a later state above an earlier": (
        [("products/skerry-solo.yaml", "since: 2026-09-01", "since: 2025-09-01")],
        "catalog/products/skerry-solo.yaml:11:32: error: statuses[1].since: 2025-09-01 does not "
        "come after 2026-01-05 above it; sort them by day, each day once (status-order)\n",
    ),
    "two states of one day": (
        [("products/skerry-solo.yaml", "since: 2026-09-01", "since: 2026-01-05")],
        "catalog/products/skerry-solo.yaml:11:32: error: statuses[1].since: 2026-01-05 does not "
        "come after 2026-01-05 above it; sort them by day, each day once (status-order)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
