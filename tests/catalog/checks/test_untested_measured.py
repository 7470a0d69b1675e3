"""Twin of catalog/checks/untested_measured.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a measurement of what was not tested": (
        [
            ("products/slate-flat.yaml", "unit: lent by a shop", "unit: none tested"),
            ("products/slate-flat.yaml", "returned: returned", "returned: not applicable"),
        ],
        "catalog/products/slate-flat.yaml:20:14: error: observations.weight_g[0].grade: "
        "measured, yet no unit was tested; correct the grade, or disclosure.unit "
        "(untested-measured)\n",
    ),
    "a test without its return": (
        [("products/skerry-duo.yaml", "returned: kept", "returned: not applicable")],
        "catalog/products/skerry-duo.yaml:33:65: error: disclosure.returned: is not applicable, "
        "yet the unit is bought at retail; write kept, returned or to be returned "
        "(untested-measured)\n",
    ),
    "a return without a test": (
        [("products/skerry-solo.yaml", "returned: not applicable", "returned: kept")],
        "catalog/products/skerry-solo.yaml:21:69: error: disclosure.returned: is kept, yet the "
        "unit is none tested; write not applicable (untested-measured)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
