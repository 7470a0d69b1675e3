from decimal import Decimal

import pytest
from pydantic import TypeAdapter, ValidationError

from spindlewise.buyer.model import BuyerId, Currency, ProductId, Statement, Sum, Words

SUM: TypeAdapter[Decimal] = TypeAdapter(Sum)


class _Said(Statement):
    words: Words
    sum: Sum


@pytest.mark.parametrize(
    ("written", "kept"), [(899, "899"), (899.1, "899.1"), (0.1, "0.1"), (30_000_000, "30000000")]
)
def test_a_sum_is_the_decimal_that_stands_in_the_file(written: float, kept: str) -> None:
    assert SUM.validate_python(written, strict=True) == Decimal(kept)
    assert SUM.validate_python(Decimal(kept), strict=True) == Decimal(kept)


@pytest.mark.parametrize("written", [-1, True, "900", float("nan"), float("inf"), 10**400, None])
def test_a_sum_is_a_finite_number_not_below_nothing(written: object) -> None:
    with pytest.raises(ValidationError):
        SUM.validate_python(written, strict=True)


def test_an_endless_sum_is_told_in_plain_words() -> None:
    with pytest.raises(ValidationError, match=r"is not a finite amount \| write a plain decimal number"):
        SUM.validate_python(float("inf"))


def test_a_statement_is_strict_frozen_and_knows_its_keys() -> None:
    said = _Said(words="as it was", sum=Decimal(1))
    with pytest.raises(ValidationError, match="frozen"):
        said.words = "otherwise"  # type: ignore[misc]
    with pytest.raises(ValidationError, match="extra"):
        _Said.model_validate({"words": "a", "sum": 1, "other": 1})
    with pytest.raises(ValidationError, match="string_type"):
        _Said.model_validate({"words": 5, "sum": 1})


@pytest.mark.parametrize("text", ["a\nb", "a\x1b[31m", "a\u202eb", ""])
def test_words_can_be_seen(text: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Words).validate_python(text)


@pytest.mark.parametrize("code", ["XAU", "EUX", "eur", "EURO", "€"])
def test_a_currency_is_in_circulation(code: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Currency).validate_python(code)
    assert TypeAdapter(Currency).validate_python("KWD") == "KWD"


@pytest.mark.parametrize("name", ["a", "A-b", "a--b", "-a", "a-", "a b", "a" * 61, "é-é"])
def test_an_id_can_be_a_file_name(name: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(ProductId).validate_python(name)
    assert TypeAdapter(ProductId).validate_python("a" * 60)


@pytest.mark.parametrize("name", ["con", "nul", "com1", "lpt9"])
def test_an_id_names_the_file_of_an_answer_and_so_no_device(name: str) -> None:
    with pytest.raises(ValidationError, match="reserved file name"):
        TypeAdapter(BuyerId).validate_python(name)
