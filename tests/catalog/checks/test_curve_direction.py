"""Twin of catalog/checks/curve_direction.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a price curve that rises": (
        [
            ("criteria.yaml", "{at: 900, merit: 0.2}", "{at: 900, merit: 1}"),
            ("criteria.yaml", "{at: 200, merit: 1}", "{at: 200, merit: 0.5}"),
        ],
        "catalog/criteria.yaml:8:53: error: criteria.price.knots[1].merit: the merit rises from "
        "0.5 to 1 as the figure grows; write at most 0.5 (curve-direction)\n",
    ),
    "a warranty curve that falls": (
        [
            (
                "criteria.yaml",
                "[{at: 0, merit: 0}, {at: 5, merit: 1}]",
                "[{at: 0, merit: 1}, {at: 5, merit: 0}]",
            )
        ],
        "catalog/criteria.yaml:43:47: error: criteria.warranty.knots[1].merit: the merit falls "
        "from 1 to 0 as the figure grows; write at least 1 (curve-direction)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a curve that stays flat": [("criteria.yaml", "{at: 900, merit: 0.2}", "{at: 900, merit: 1}")],
    "stack either way": [
        (
            "criteria.yaml",
            "[{at: 8, merit: 1}, {at: 19, merit: 0}]",
            "[{at: 8, merit: 0}, {at: 19, merit: 1}]",
        )
    ],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
