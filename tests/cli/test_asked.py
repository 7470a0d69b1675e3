from decimal import Decimal

import pytest

from small_answers import desk
from spindlewise.cli.asked import Statements, amount_from, asking_buyer


@pytest.mark.parametrize("text", ["", "x", "1_000", "1,5", "inf", "-1", "1000001", "٣"])
def test_what_is_no_amount_is_said_so(text: str) -> None:
    with pytest.raises(ValueError, match="is no amount"):
        amount_from(text)


def test_an_amount_keeps_its_digits() -> None:
    assert amount_from(" 899.90 ") == Decimal("899.90")


def test_codes_may_be_typed_small(capsys: pytest.CaptureFixture[str]) -> None:
    buyer = asking_buyer(Statements(region="us", currency="eur", weights="price=1"), desk().catalog)
    assert (buyer.region, buyer.currency) == ("US", "EUR")
    assert capsys.readouterr().err == ""
