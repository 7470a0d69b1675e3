"""Twin of catalog/checks/curve_unit.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "kilograms": (
        [("criteria.yaml", "unit: g\n", "unit: kg\n")],
        "catalog/criteria.yaml:21:11: error: criteria.weight.unit: is 'kg', the figures come in "
        "g; write g, and the knots and the span in it (curve-unit)\n",
    ),
    "another currency than on top": (
        [("criteria.yaml", "currency: EUR", "currency: JPY")],
        "catalog/criteria.yaml:7:11: error: criteria.price.unit: is 'EUR', the figures come in "
        "JPY; write JPY, and the knots and the span in it (curve-unit)\n"
        "catalog/criteria.yaml:14:11: error: criteria.ownership.unit: is 'EUR', the figures come "
        "in JPY; write JPY, and the knots and the span in it (curve-unit)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
