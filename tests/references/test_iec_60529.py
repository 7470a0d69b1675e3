"""IEC 60529:1989, Degrees of protection provided by enclosures, clauses 4 to 6.

From an extract of the standard: a second numeral up to 6 implies all lower ones; 7 and 8 (immersion) imply
neither 5 nor 6 (jets), so an enclosure for both bears a dual marking such as IPX5/IPX7; X is not specified.
That 9 (hot jets, added in 2013) implies neither immersion nor the cold jets is from memory.
"""

import pytest

from spindlewise.catalog.ingress_code import meets

IMPLIED = {
    "0": "0",
    "1": "01",
    "2": "012",
    "3": "0123",
    "4": "01234",
    "5": "012345",
    "6": "0123456",
    "7": "012347",
    "8": "0123478",
    "9": "012349",
}
"""By second numeral, all that it stands for."""


@pytest.mark.parametrize("has", IMPLIED)
def test_a_second_numeral_stands_for_what_the_standard_says(has: str) -> None:
    met = "".join(least for least in "0123456789" if meets(f"IPX{has}", f"IPX{least}"))
    assert met == IMPLIED[has]


def test_immersion_does_not_stand_for_jets() -> None:
    assert meets("IPX7", "IPX6") is False
    assert meets("IPX8", "IPX5") is False
    assert meets("IPX6", "IPX7") is False


@pytest.mark.parametrize(
    ("least", "met"), [("IPX5", True), ("IPX7", True), ("IPX4", True), ("IPX6", False), ("IPX8", False)]
)
def test_a_dual_marking_stands_for_both_its_codes(least: str, met: bool) -> None:
    assert meets("IPX5/IPX7", least) is met


def test_a_dust_tight_enclosure_is_dust_protected_too() -> None:
    assert meets("IP6X", "IP5X") is True
    assert meets("IP5X", "IP6X") is False
    assert meets("IP67", "IP67") is True
