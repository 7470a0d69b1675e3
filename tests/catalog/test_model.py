from datetime import date
from decimal import Decimal

import pytest
from pydantic import TypeAdapter, ValidationError

from spindlewise.catalog.model import (
    GRADES,
    Address,
    Amount,
    Currency,
    DatedPrice,
    Identifier,
    Record,
    Region,
    Text,
)
from spindlewise.problems import RESERVED_FILE_NAMES

AMOUNT: TypeAdapter[Decimal] = TypeAdapter(Amount)


class _Facts(Record):
    text: Text
    grams: float


def test_a_record_is_strict_frozen_finite_and_knows_its_keys() -> None:
    facts = _Facts(text="a", grams=1.0)
    with pytest.raises(ValidationError, match="frozen"):
        facts.grams = 2.0  # type: ignore[misc]
    for wrong in (
        {"text": "a", "grams": float("nan")},
        {"text": "a", "grams": "1"},
        {"text": 1, "grams": 1.0},
    ):
        with pytest.raises(ValidationError):
            _Facts.model_validate(wrong)
    with pytest.raises(ValidationError, match="extra"):
        _Facts.model_validate({"text": "a", "grams": 1.0, "more": 1})


@pytest.mark.parametrize(("written", "kept"), [(899.1, "899.1"), (0, "0"), (1.10, "1.1"), (480, "480")])
def test_an_amount_is_the_decimal_that_stands_in_the_file(written: float, kept: str) -> None:
    assert AMOUNT.validate_python(written, strict=True) == Decimal(kept)


@pytest.mark.parametrize("written", [-1, True, "2.40", float("nan"), float("-inf"), 10**400, None])
def test_an_amount_is_a_finite_number_not_below_nothing(written: object) -> None:
    with pytest.raises(ValidationError):
        AMOUNT.validate_python(written, strict=True)


def test_an_endless_amount_is_told_in_plain_words() -> None:
    with pytest.raises(ValidationError, match=r"is not a finite amount \| write a plain decimal number"):
        AMOUNT.validate_python(float("inf"))


def test_an_id_is_a_file_name_everywhere() -> None:
    for name in sorted(RESERVED_FILE_NAMES):
        with pytest.raises(ValidationError, match="reserved file name"):
            TypeAdapter(Identifier).validate_python(name)
    assert TypeAdapter(Identifier).validate_python("console") == "console"
    for name in ("a", "A1", "a--b", "-ab", "ab-", "a_b", "a.b", "a/b", "..", "a" * 61):
        with pytest.raises(ValidationError):
            TypeAdapter(Identifier).validate_python(name)


@pytest.mark.parametrize("text", ["", " a", "a ", "a\tb", "a\u202eb", "a\x00", "a" * 601, "\ufeffa"])
def test_text_can_be_seen_and_has_no_stray_space(text: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Text).validate_python(text)


@pytest.mark.parametrize("address", ["https://example.org/a", "http://example.org"])
def test_an_address_is_on_the_web(address: str) -> None:
    assert TypeAdapter(Address).validate_python(address) == address


@pytest.mark.parametrize(
    "address",
    ["javascript:alert(1)", "data:text/html,x", "//example.org", "https://", "https:///a", "ftp://a.b", ""],
)
def test_what_is_no_address_on_the_web(address: str) -> None:
    with pytest.raises(ValidationError, match=r"is not a web address \| write it with https:// in front"):
        TypeAdapter(Address).validate_python(address)


@pytest.mark.parametrize("code", ["XAU", "XXX", "EUX", "eur", "EU"])
def test_a_currency_is_in_circulation(code: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Currency).validate_python(code)


def test_a_region_is_in_capitals() -> None:
    assert TypeAdapter(Region).validate_python("EU") == "EU"
    for region in ("E", "eu", "E1", "ABCDEFGHI"):
        with pytest.raises(ValidationError):
            TypeAdapter(Region).validate_python(region)


def test_the_bench_goes_before_others_and_they_before_the_maker() -> None:
    assert GRADES == ("measured", "reported", "claimed")


def test_a_side_price_is_dated_and_placed() -> None:
    right = {
        "date": date(2026, 1, 1),
        "region": "EU",
        "currency": "EUR",
        "amount": 2.4,
        "tax": "in",
        "source": "shop",
    }
    assert DatedPrice.model_validate(right).amount == Decimal("2.4")
    for key in right:
        with pytest.raises(ValidationError):
            DatedPrice.model_validate({k: v for k, v in right.items() if k != key})


@pytest.mark.parametrize("code", ["CON", "NUL", "PRN", "AUX"])
def test_a_region_names_a_page_and_so_no_device(code: str) -> None:
    with pytest.raises(ValidationError, match="reserved file name"):
        TypeAdapter(Region).validate_python(code)
