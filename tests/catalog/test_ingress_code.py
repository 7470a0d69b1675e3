import pytest

from spindlewise.catalog.ingress_code import meets

SOLID = "X0123456"
WATER = "X0123456789"


@pytest.mark.parametrize("least", WATER[1:])
def test_a_code_meets_itself(least: str) -> None:
    assert meets(f"IPX{least}", f"IPX{least}") is True


def test_what_is_not_specified_is_not_known() -> None:
    assert meets("IPX7", "IP5X") is None
    assert meets("IP6X", "IPX4") is None
    assert meets("IPX5", "IP67") is False  # the jets do not answer for the bath, whatever the dust


def test_of_two_codes_the_better_one_answers() -> None:
    assert meets("IPX5/IPX7", "IPX7") is True
    assert meets("IPX5/IPX7", "IPX5") is True
    assert meets("IPX5/IPX7", "IPX6") is False
    assert meets("IPX5/IP6X", "IPX7") is None


def test_dust_proof_against_six_is_proof_against_less() -> None:
    for has in SOLID[1:]:
        for least in SOLID[1:]:
            assert meets(f"IP{has}X", f"IP{least}X") is (has >= least)
