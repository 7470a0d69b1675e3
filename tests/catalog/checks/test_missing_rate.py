"""Twin of catalog/checks/missing_rate.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "in the price log": (
        [("prices.csv", "slate-flat,EU,EUR", "slate-flat,EU,GBP")],
        "catalog/prices.csv:6:26: warning: currency: no rate between GBP and EUR dated on or "
        "before 2026-10-01; add one to rates.csv (missing-rate)\n",
    ),
    "in a side price": (
        [("products/skerry-duo.yaml", "currency: JPY", "currency: GBP")],
        "catalog/products/skerry-duo.yaml:23:48: warning: service.prices[0].currency: no rate "
        "between GBP and JPY dated on or before 2026-02-01; add one to rates.csv (missing-rate)\n",
    ),
    "a rate that comes too late": (
        [
            ("prices.csv", "skerry-duo,JP,JPY,128000", "skerry-duo,JP,EUR,800"),
            ("rates.csv", "2026-01-01", "2026-05-01"),
        ],
        "catalog/prices.csv:5:26: warning: currency: no rate between EUR and JPY dated on or "
        "before 2026-04-11; add one to rates.csv (missing-rate)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "a rate the other way round": [("prices.csv", "skerry-duo,JP,JPY,128000", "skerry-duo,JP,EUR,800")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
