"""Rates and taxes: conversion that never looks ahead, and what is missing as a value."""

from datetime import date
from decimal import ROUND_DOWN, Decimal, localcontext
from pathlib import Path

import pytest

from spindlewise.catalog.money import (
    Converted,
    MissingRate,
    MissingTax,
    Money,
    RateRow,
    RateTable,
    Taxed,
    TaxRow,
    TaxTable,
    read_rates,
    read_taxes,
    to_minor_units,
)
from spindlewise.problems import render

JANUARY, MARCH, MAY, TODAY = date(2026, 1, 5), date(2026, 3, 2), date(2026, 5, 4), date(2026, 11, 20)


def _rate(day: date, base: str, quote: str, rate: str) -> RateRow:
    return RateRow(day, base, quote, Decimal(rate))


def _converted(table: RateTable, amount: str, currency: str, to: str, day: date = TODAY) -> Converted:
    found = table.convert(Money(Decimal(amount), currency), to, day)
    assert isinstance(found, Converted)
    return found


def test_a_rate_is_so_many_of_the_quote_for_one_of_the_base() -> None:
    row = _rate(JANUARY, "EUR", "USD", "1.25")
    table = RateTable([row])
    assert _converted(table, "800.00", "EUR", "USD") == Converted(Money(Decimal("1000.0000"), "USD"), (row,))
    assert _converted(table, "1000", "USD", "EUR") == Converted(Money(Decimal("800"), "EUR"), (row,))


def test_a_rate_of_two_halves_on_the_way_back() -> None:
    table = RateTable([_rate(JANUARY, "EUR", "USD", "2")])
    assert _converted(table, "100", "EUR", "USD").money.amount == 200
    assert _converted(table, "100", "USD", "EUR").money.amount == 50


def test_the_same_currency_takes_no_rate() -> None:
    assert _converted(RateTable(), "5", "EUR", "EUR") == Converted(Money(Decimal(5), "EUR"), ())


def test_the_newest_rate_by_the_day_counts_whichever_way_round_it_is_written() -> None:
    rows = [
        _rate(MAY, "USD", "EUR", "0.5"),
        _rate(JANUARY, "EUR", "USD", "1.25"),
        _rate(MARCH, "EUR", "USD", "1.6"),
    ]
    table = RateTable(rows)
    assert table.newest("EUR", "USD", TODAY) == rows[0]
    assert _converted(table, "100", "EUR", "USD").money.amount == 200
    assert _converted(table, "100", "EUR", "USD", date(2026, 5, 3)).money.amount == 160
    assert _converted(table, "100", "EUR", "USD", MARCH).money.amount == 160
    assert _converted(table, "100", "EUR", "USD", JANUARY).money.amount == 125


def test_a_later_rate_is_never_used_however_near() -> None:
    table = RateTable([_rate(MARCH, "EUR", "USD", "1.25"), _rate(JANUARY, "EUR", "JPY", "160")])
    day = date(2026, 3, 1)
    assert table.convert(Money(Decimal(1), "EUR"), "USD", day) == MissingRate("EUR", "USD", day)
    assert table.convert(Money(Decimal(1), "JPY"), "USD", day) == MissingRate("JPY", "USD", day)
    assert table.convert(Money(Decimal(1), "GBP"), "EUR", TODAY) == MissingRate("GBP", "EUR", TODAY)


def test_of_two_rates_of_one_day_the_later_given_counts() -> None:
    table = RateTable([_rate(MAY, "EUR", "USD", "1.1"), _rate(MAY, "EUR", "USD", "1.2")])
    assert _converted(table, "1", "EUR", "USD").money.amount == Decimal("1.2")


def test_a_third_currency_helps_out_in_all_four_directions() -> None:
    for first in (_rate(MAY, "JPY", "EUR", "0.00625"), _rate(MAY, "EUR", "JPY", "160")):
        for second in (_rate(MARCH, "EUR", "USD", "1.25"), _rate(MARCH, "USD", "EUR", "0.8")):
            found = _converted(RateTable([first, second]), "16000", "JPY", "USD")
            assert found.money == Money(Decimal(125), "USD")
            assert found.via == (first, second)


def test_a_direct_rate_goes_before_a_way_round_even_an_older_one() -> None:
    direct = _rate(JANUARY, "JPY", "USD", "0.01")
    rows = [direct, _rate(MAY, "EUR", "JPY", "160"), _rate(MAY, "EUR", "USD", "1.25")]
    assert _converted(RateTable(rows), "100", "JPY", "USD").via == (direct,)


def test_the_way_round_with_the_newest_older_rate_is_taken_and_of_equals_the_first_by_code() -> None:
    by_euro = [_rate(JANUARY, "EUR", "JPY", "160"), _rate(MAY, "EUR", "USD", "1.25")]
    by_pound = [_rate(MARCH, "GBP", "JPY", "190"), _rate(MARCH, "GBP", "USD", "1.5")]
    assert _converted(RateTable(by_euro + by_pound), "1", "JPY", "USD").via == tuple(by_pound)
    assert _converted(RateTable(by_euro + by_pound), "1", "USD", "JPY").via == tuple(reversed(by_pound))
    by_franc = [_rate(MARCH, "CHF", "JPY", "170"), _rate(MARCH, "CHF", "USD", "1.1")]
    assert _converted(RateTable(by_pound + by_franc), "1", "JPY", "USD").via == tuple(by_franc)


def test_two_third_currencies_are_one_too_many() -> None:
    rows = [_rate(MAY, "JPY", "EUR", "1"), _rate(MAY, "EUR", "GBP", "1"), _rate(MAY, "GBP", "USD", "1")]
    table = RateTable(rows)
    assert table.convert(Money(Decimal(1), "JPY"), "USD", TODAY) == MissingRate("JPY", "USD", TODAY)


def test_a_way_round_costs_no_digit() -> None:
    """One third and back again is the half that a till rounds up, not a hair below it."""
    table = RateTable([_rate(MAY, "USD", "EUR", "3"), _rate(MAY, "USD", "JPY", "1.5")])
    found = _converted(table, "1", "EUR", "JPY").money
    assert found.amount == Decimal("0.5")
    assert to_minor_units(found) == Money(Decimal(1), "JPY")


@pytest.mark.parametrize("digits", [4, 28])
def test_the_callers_decimal_settings_change_no_digit(digits: int) -> None:
    table = RateTable([_rate(MAY, "EUR", "USD", "1.12345678")])
    taxes = TaxTable([TaxRow(MAY, "US", Decimal("7.1255"), "out")])
    with localcontext() as context:
        context.prec, context.rounding = digits, ROUND_DOWN
        assert str(_converted(table, "123456.78", "EUR", "USD").money.amount) == "138698.3565279684"
        taxed = taxes.with_tax(Decimal("123456.78"), "US", TODAY)
        assert isinstance(taxed, Taxed)
        assert str(taxed.amount) == "132253.69285890"
        assert str(to_minor_units(Money(taxed.amount, "USD")).amount) == "132253.69"


def test_tax_is_added_and_taken_out_with_the_newest_rate_by_the_day() -> None:
    old, new = TaxRow(JANUARY, "EU", Decimal(19), "in"), TaxRow(MAY, "EU", Decimal(20), "in")
    table = TaxTable([new, old])
    assert table.rate("EU", date(2026, 5, 3)) == old
    assert table.with_tax(Decimal("100.00"), "EU", MAY) == Taxed(Decimal("120.000000"), new)
    assert table.without_tax(Decimal("120.00"), "EU", TODAY) == Taxed(Decimal(100), new)
    assert table.without_tax(Decimal("119.00"), "EU", JANUARY) == Taxed(Decimal(100), old)


def test_of_two_tax_rates_of_one_day_the_later_given_counts() -> None:
    table = TaxTable([TaxRow(MAY, "EU", Decimal(19), "in"), TaxRow(MAY, "EU", Decimal(20), "in")])
    found = table.rate("EU", TODAY)
    assert found is not None
    assert found.rate_pct == 20


def test_without_a_dated_tax_rate_nothing_is_added_or_taken_out() -> None:
    table = TaxTable([TaxRow(MAY, "EU", Decimal(20), "in")])
    before = date(2026, 5, 3)
    assert table.with_tax(Decimal(1), "EU", before) == MissingTax("EU", before)
    assert table.without_tax(Decimal(1), "EU", before) == MissingTax("EU", before)
    assert table.with_tax(Decimal(1), "US", TODAY) == MissingTax("US", TODAY)


def test_a_region_may_have_no_tax_on_goods() -> None:
    row = TaxRow(MAY, "HK", Decimal(0), "in")
    found = TaxTable([row]).without_tax(Decimal("5.00"), "HK", TODAY)
    assert found == Taxed(Decimal("5.00"), row)


def test_minor_units_are_rounded_as_at_a_till() -> None:
    assert to_minor_units(Money(Decimal("1.005"), "EUR")) == Money(Decimal("1.01"), "EUR")
    assert to_minor_units(Money(Decimal("1.004999"), "EUR")) == Money(Decimal("1.00"), "EUR")


def _file(folder: Path, text: str) -> Path:
    path = folder / "file.csv"
    path.write_text(text, encoding="utf-8")
    return path


def test_rates_are_read_as_written(tmp_path: Path) -> None:
    path = _file(tmp_path, "date,base,quote,rate\n2026-05-04,EUR,USD,1.1180\n2026-01-05,EUR,JPY,162.40\n")
    table, problems = read_rates(path, "rates.csv")
    assert problems == []
    assert table.rows == (_rate(MAY, "EUR", "USD", "1.1180"), _rate(JANUARY, "EUR", "JPY", "162.40"))


def test_every_slip_in_the_rates_is_said_and_the_rest_is_read(tmp_path: Path) -> None:
    path = _file(
        tmp_path,
        "date,base,quote,rate\n"
        "2026-05-04,EUR,USD,1.1180\n"
        "2026-05-04,USD,EUR,0.8945\n"
        "2026-05-04,EUR,EUR,1\n"
        "2026-5-4,EU,USD,0\n"
        '2026-05-04,EUR,JPY,"162,40"\n'
        "2026-05-04,EUR,GBP\n",
    )
    table, problems = read_rates(path, "rates.csv")
    assert len(table.rows) == 1
    assert [line.partition("rates.csv:")[2] for line in render(problems, "plain").splitlines()] == [
        "3:1: error: date: USD and EUR have a rate of 2026-05-04 in line 2 already; "
        "take one of them out (repeated-rate)",
        "4:16: error: quote: EUR against itself; name two different currencies (same-currency)",
        "5:1: error: date: found '2026-5-4', which is no date; "
        "write the day as YYYY-MM-DD, for instance 2026-11-18 (bad-date)",
        "5:10: error: base: found 'EU', which is no currency in circulation; "
        "did you mean EUR? (unknown-currency)",
        "5:17: error: rate: found 0; write more than 0; unknown is no row at all (not-positive)",
        "6:20: error: rate: found '162,40', which is not a plain number; write 162.40 (bad-number)",
        "7:1: error: 3 fields, 4 are needed: date,base,quote,rate; leave no field out (field-count)",
    ]


def test_taxes_are_read_as_written_and_none_is_a_rate_too(tmp_path: Path) -> None:
    path = _file(tmp_path, "date,region,rate_pct,habit\n2026-05-04,EU,20,in\n2026-05-04,HK,0,out\n")
    table, problems = read_taxes(path, "taxes.csv")
    assert problems == []
    assert table.rows == (TaxRow(MAY, "EU", Decimal(20), "in"), TaxRow(MAY, "HK", Decimal(0), "out"))


def test_every_slip_in_the_taxes_is_said_and_the_rest_is_read(tmp_path: Path) -> None:
    path = _file(
        tmp_path,
        "date,region,rate_pct,habit\n"
        "2026-05-04,EU,20,in\n"
        "2026-05-04,EU,19,in\n"
        "2026-05-04,US,750,out\n"
        "2026-05-04,,-1,inn\n",
    )
    table, problems = read_taxes(path, "taxes.csv")
    assert len(table.rows) == 1
    assert [line.partition("taxes.csv:")[2] for line in render(problems, "plain").splitlines()] == [
        "3:1: error: date: EU has a rate of 2026-05-04 in line 2 already; "
        "take one of them out (repeated-rate)",
        "4:15: error: rate_pct: 750 % is no tax rate; write percent, such as 20 (tax-rate)",
        "5:12: error: region: is empty; write a value (empty-field)",
        "5:13: error: rate_pct: found -1; write 0 or more; unknown is no row at all (not-positive)",
        "5:16: error: habit: found 'inn'; allowed: in, out; did you mean in? (unknown-word)",
    ]


def test_a_tax_of_all_is_the_most_and_a_region_has_eight_letters_at_most(tmp_path: Path) -> None:
    path = _file(
        tmp_path,
        "date,region,rate_pct,habit\n2026-05-04,EU,100,in\n2026-05-04,US,100.5,out\n2026-05-04,EIGHTEEN,5,in\n"
        "2026-05-04,ELSEWHERE,5,in\n",
    )
    table, problems = read_taxes(path, "taxes.csv")
    assert [row.region for row in table.rows] == ["EU", "EIGHTEEN"]
    assert [(problem.place.line, problem.rule) for problem in problems] == [
        (3, "tax-rate"),
        (5, "long-field"),
    ]


def test_a_tax_of_which_a_part_is_missing_is_none(tmp_path: Path) -> None:
    path = _file(
        tmp_path,
        "date,region,rate_pct,habit\n,EU,20,in\n2026-05-04,,20,in\n2026-05-04,EU,,in\n2026-05-04,EU,20,\n",
    )
    table, problems = read_taxes(path, "taxes.csv")
    assert table.rows == ()
    assert [problem.place.line for problem in problems] == [2, 3, 4, 5]


@pytest.mark.parametrize("read", [read_rates, read_taxes])
def test_a_file_that_is_missing_gives_an_empty_table_and_a_problem(tmp_path: Path, read: object) -> None:
    assert callable(read)
    table, problems = read(tmp_path / "none.csv", "none.csv")
    assert table.rows == ()
    assert [p.rule for p in problems] == ["missing-file"]
