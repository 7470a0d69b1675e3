from decimal import Decimal

import pytest
import typer

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


def test_a_decimal_comma_is_told_with_the_point_that_was_meant() -> None:
    with pytest.raises(ValueError, match=r"'699,50' is no amount; write 699\.50"):
        amount_from("699,50")
    for unclear in ("1,449", "1.000,50"):
        with pytest.raises(ValueError, match="write a plain number such as"):
            amount_from(unclear)


def test_a_currency_that_is_none_is_refused_in_our_own_words(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit):
        asking_buyer(Statements(currency="XXX", weights="price=1"), desk().catalog)
    said = capsys.readouterr().err
    assert said.startswith("error: currency: 'XXX' is no currency in circulation")
    assert "validation" not in said
    assert "Value error" not in said
