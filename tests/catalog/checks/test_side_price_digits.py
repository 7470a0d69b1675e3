"""Twin of catalog/checks/side_price_digits.py: what is told, to the letter, and what passes."""

from pathlib import Path

import pytest

from small_catalog import Change, said

TOLD: dict[str, tuple[list[Change], str]] = {
    "a tenth of a yen": (
        [("products/skerry-duo.yaml", "amount: 3900", "amount: 3900.5")],
        "catalog/products/skerry-duo.yaml:23:61: error: service.prices[0].amount: 3900.5 has "
        "more decimals than JPY has (0); write 3901 (side-price-digits)\n",
    ),
    "a tenth of a cent": (
        [("products/skerry-duo.yaml", "amount: 2.40", "amount: 2.405")],
        "catalog/products/skerry-duo.yaml:19:61: error: battery.spare_prices[0].amount: 2.405 "
        "has more decimals than EUR has (2); write 2.41 (side-price-digits)\n",
    ),
}

PASSES: dict[str, list[Change]] = {
    "nothing to pay": [("products/skerry-duo.yaml", "amount: 2.40", "amount: 0")],
}


@pytest.mark.parametrize("case", TOLD)
def test_it_is_told_to_the_letter(tmp_path: Path, case: str) -> None:
    changes, expected = TOLD[case]
    assert said(tmp_path, *changes) == expected


@pytest.mark.parametrize("case", PASSES)
def test_it_passes(tmp_path: Path, case: str) -> None:
    assert said(tmp_path, *PASSES[case]) == ""
