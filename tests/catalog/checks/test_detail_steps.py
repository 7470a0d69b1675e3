"""Twin of catalog/checks/detail_steps.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a misspelt step": (
        [("criteria.yaml", "power only: 0.65", "power alone: 0.65")],
        "catalog/criteria.yaml:57:7: error: criteria.detail.steps: no merit for 'power only'; "
        "add a line for each, from 0 to 1 (detail-steps)\n"
        "catalog/criteria.yaml:59:20: error: criteria.detail.steps.power alone: no such step as "
        "'power alone'; did you mean power only? (detail-steps)\n",
    ),
    "a step too many": (
        [("criteria.yaml", "      nothing: 0\n", "      nothing: 0\n      wheel speed: 0.2\n")],
        "catalog/criteria.yaml:63:20: error: criteria.detail.steps.wheel speed: no such step as "
        "'wheel speed'; take it out (detail-steps)\n",
    ),
    "two steps missing": (
        [("criteria.yaml", "      nothing: 0\n      unknown: 0\n", "")],
        "catalog/criteria.yaml:57:7: error: criteria.detail.steps: no merit for 'nothing', "
        "'unknown'; add a line for each, from 0 to 1 (detail-steps)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
