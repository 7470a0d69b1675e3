"""Twin of catalog/checks/stack_basis.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a span that nobody states": (
        [("products/skerry-duo.yaml", "span: axis to pedal top", "span: unknown")],
        "catalog/products/skerry-duo.yaml:48:84: warning: observations.stack_mm[0].basis.span: "
        "unknown: this stack height moves no saddle; ask whoever stated it: to the pedal top, or "
        "to the sole with the cleat in (stack-basis)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "to the sole": [("products/skerry-duo.yaml", "span: axis to pedal top", "span: axis to sole")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
