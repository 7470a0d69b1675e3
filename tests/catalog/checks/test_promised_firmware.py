"""Twin of catalog/checks/promised_firmware.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a promise that was there from the start": (
        [("products/skerry-duo.yaml", 'firmware: "2.0"', "firmware: not applicable")],
        "catalog/products/skerry-duo.yaml:32:67: error: links[1].carries[1].firmware: a promise "
        "cannot have been there from the start; write the version that was announced, in quotes, "
        "or unknown (promised-firmware)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a promise of unknown firmware": [("products/skerry-duo.yaml", 'firmware: "2.0"', "firmware: unknown")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
