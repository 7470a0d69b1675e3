"""Twin of catalog/checks/link_twice.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "one protocol twice": (
        [("products/skerry-duo.yaml", "protocol: Bluetooth", "protocol: ANT+")],
        "catalog/products/skerry-duo.yaml:29:15: error: links[1].protocol: ANT+ stands above "
        "already; put both lists of carries into one (link-twice)\n",
    ),
    "one thing twice a day": (
        [
            (
                "products/skerry-duo.yaml",
                'since: promised, firmware: "2.0"',
                'since: 2026-01-05, firmware: "2.0"',
            )
        ],
        "catalog/products/skerry-duo.yaml:32:47: error: links[1].carries[1].since: power is "
        "stated for 2026-01-05 above already; keep one of them (link-twice)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "one thing on two days": [
        ("products/skerry-duo.yaml", 'since: promised, firmware: "2.0"', 'since: 2026-06-05, firmware: "2.0"')
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
