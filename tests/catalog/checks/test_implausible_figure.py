"""Twin of catalog/checks/implausible_figure.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a zero for unknown": (
        [("products/skerry-duo.yaml", "value: 54", "value: 0")],
        "catalog/products/skerry-duo.yaml:50:64: error: observations.pedal_offset_mm[0].value: a "
        "zero says that there is such a figure; write unknown, or none where there is none "
        "(implausible-figure)\n",
    ),
    "kilograms for grams": (
        [("products/skerry-duo.yaml", "value: 340", "value: 0.34")],
        "catalog/products/skerry-duo.yaml:39:14: warning: observations.weight_g[0].value: 0.34 g "
        "lies outside the usual 60 to 1200 g; compare unit and decimal point with the source "
        "(implausible-figure)\n",
    ),
    "too much": (
        [("products/skerry-duo.yaml", "value: 110}", "value: 1100}")],
        "catalog/products/skerry-duo.yaml:52:64: warning: observations.rider_limit_kg[0].value: "
        "1100 kg lies outside the usual 50 to 250 kg; compare unit and decimal point with the "
        "source (implausible-figure)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "no warranty at all": [
        ("products/skerry-duo.yaml", "source: sheet, value: 2}", "source: sheet, value: 0}")
    ],
    "none in a word": [("products/skerry-duo.yaml", "value: 110}", "value: none}")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
