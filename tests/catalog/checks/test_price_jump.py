"""Twin of catalog/checks/price_jump.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a slip of the decimal point": (
        [
            (
                "prices.csv",
                "2026-04-11,",
                "2026-04-10,skerry-duo,EU,EUR,84.90,in,street,Quay Wheels,,product page\n2026-04-11,",
            )
        ],
        "catalog/prices.csv:5:30: warning: amount: EUR 84.90 after EUR 849.00 of 2026-03-02 in "
        "line 3; compare with the source; append a corrected row where it is a slip (price-jump)\n",
    ),
    "more than twice": (
        [
            (
                "prices.csv",
                "2026-04-11,",
                "2026-04-10,skerry-duo,EU,EUR,1698.01,in,street,Quay Wheels,,product page\n2026-04-11,",
            )
        ],
        "catalog/prices.csv:5:30: warning: amount: EUR 1,698.01 after EUR 849.00 of 2026-03-02 "
        "in line 3; compare with the source; append a corrected row where it is a slip "
        "(price-jump)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "just half": [
        (
            "prices.csv",
            "2026-04-11,",
            "2026-04-10,skerry-duo,EU,EUR,424.50,in,street,Quay Wheels,,product page\n2026-04-11,",
        )
    ],
    "another kind of price": [
        (
            "prices.csv",
            "2026-04-11,",
            "2026-04-10,skerry-duo,EU,EUR,99.00,in,clearance,Quay Wheels,,product page\n2026-04-11,",
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
