"""Twin of catalog/checks/unknown_region.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "in the price log": (
        [("prices.csv", "slate-flat,EU", "slate-flat,EUR")],
        "catalog/prices.csv:6:23: error: region: no region 'EUR'; did you mean EU? (unknown-region)\n",
    ),
    "nothing like it": (
        [("prices.csv", "slate-flat,EU", "slate-flat,ZZ")],
        "catalog/prices.csv:6:23: error: region: no region 'ZZ'; write one of: EU, JP; or add it "
        "to catalog.yaml (unknown-region)\n",
    ),
    "in a side price": (
        [("products/skerry-duo.yaml", "region: JP", "region: JPN")],
        "catalog/products/skerry-duo.yaml:23:34: error: service.prices[0].region: no region "
        "'JPN'; did you mean JP? (unknown-region)\n",
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected
