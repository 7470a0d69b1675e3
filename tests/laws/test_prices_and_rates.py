"""Laws of money: nothing looks ahead, there and back is where one was, what is appended is read back."""

import csv
import tempfile
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from spindlewise.catalog.csv_text import rows_of, split_line
from spindlewise.catalog.money import (
    Converted,
    Money,
    RateRow,
    RateTable,
    Taxed,
    TaxRow,
    TaxTable,
    to_minor_units,
)
from spindlewise.catalog.price_log import (
    append_price,
    falls_in_force,
    newest,
    price_falls,
    prices_in_force,
    read_price_log,
    row_line,
)
from spindlewise.catalog.price_row import KINDS, TAXES, PriceRow
from spindlewise.units import amount_text, currency_codes, minor_digits

START = date(2026, 1, 1)
DAYS = st.integers(0, 40).map(lambda n: START + timedelta(days=n))
CODES = st.sampled_from(["EUR", "USD", "JPY", "GBP", "KWD"])
VISIBLE = st.characters(exclude_categories=["C", "Z"])
TEXT = st.text(VISIBLE, min_size=1, max_size=20) | st.sampled_from(
    [
        '=HYPERLINK("x","y")',
        "+1",
        "-1",
        "@a",
        '"',
        '""',
        ",",
        '","',
        "a, b",
        "'",
        "日本 店",
        'say "no", twice',
    ]
)


@st.composite
def priced(draw: st.DrawFn, text: st.SearchStrategy[str] = TEXT) -> PriceRow:
    """A row that the log would take."""
    currency = draw(st.sampled_from(currency_codes()))
    units = draw(st.integers(1, 10**9))
    day, kind = draw(DAYS), draw(st.sampled_from(KINDS))
    days = draw(st.integers(0, 20) if kind == "offer" else st.none() | st.integers(0, 20))
    return PriceRow(
        0, day, draw(text), draw(st.sampled_from(["EU", "US"])), currency,
        Decimal(units).scaleb(-minor_digits(currency)), draw(st.sampled_from(TAXES)), kind, draw(text),
        None if days is None else day + timedelta(days=days), draw(text),
    )  # fmt: skip


SHOPS = st.lists(priced(st.sampled_from("ab")), max_size=12).map(
    lambda rows: [replace(row, line=at, currency="EUR") for at, row in enumerate(rows, start=2)]
)
RATES = st.lists(
    st.builds(
        RateRow, DAYS, CODES, CODES, st.decimals("0.001", "900", places=4, allow_nan=False)
    ).filter(lambda r: r.base != r.quote),
    max_size=8,
)  # fmt: skip


@settings(deadline=None, max_examples=60)
@given(st.lists(priced(), min_size=1, max_size=4, unique_by=row_line))
def test_what_is_appended_is_read_back_and_by_the_csv_module_too(rows: list[PriceRow]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "prices.csv"
        for row in rows:
            append_price(path, row)
        found, problems = read_price_log(path, "prices.csv")
        with path.open(encoding="utf-8", newline="") as file:
            plainly = [tuple(fields) for fields in csv.reader(file, strict=True)][1:]
    assert problems == []
    assert found == [replace(row, line=at) for at, row in enumerate(rows, start=2)]
    assert plainly == [row.cells() for row in rows]


@settings(deadline=None, max_examples=300)
@given(st.lists(st.text(st.sampled_from('a ,"é'), max_size=6), min_size=2, max_size=5))
def test_any_fields_once_quoted_are_found_again_where_they_stand(fields: list[str]) -> None:
    written = ['"' + field.replace('"', '""') + '"' for field in fields]
    found, fault = split_line(",".join(written))
    assert fault is None
    assert [value for _, value in found] == fields
    assert [start for start, _ in found] == [sum(len(w) + 1 for w in written[:i]) for i in range(len(fields))]


@settings(deadline=None, max_examples=300)
@given(st.text(st.sampled_from('a,"'), max_size=12))
def test_a_line_that_is_taken_is_read_as_the_csv_module_reads_it(line: str) -> None:
    assume(line)
    found, fault = split_line(line)
    if fault is None:
        assert [value for _, value in found] == next(csv.reader([line], strict=True))
    else:
        assert line[fault] == '"'


@settings(deadline=None, max_examples=200)
@given(st.binary(max_size=80) | st.lists(st.sampled_from([b"a", b",", b'"', b"\n", b"\r", b"\xc3", b"\x00"])))
def test_any_bytes_at_all_are_answered(raw: bytes | list[bytes]) -> None:
    data = raw if isinstance(raw, bytes) else b"".join(raw)
    rows, problems = rows_of(b"a,b\n" + data, "x.csv", ("a", "b"))
    lines = (b"a,b\n" + data).split(b"\n")
    assert {row.line for row in rows}.isdisjoint({p.place.line for p in problems if p.place})
    assert len(rows) + len(problems) == len(lines) - 1 - (1 if lines[-1] == b"" else 0)


@settings(deadline=None)
@given(SHOPS, DAYS)
def test_prices_never_look_ahead(rows: list[PriceRow], day: date) -> None:
    seen = [row for row in rows if row.date <= day]
    for region in ("EU", "US"):
        assert prices_in_force(rows, region, day) == prices_in_force(seen, region, day)
        assert price_falls(rows, region, START, day) == price_falls(seen, region, START, day)


@settings(deadline=None)
@given(SHOPS, DAYS, st.randoms(use_true_random=False))
def test_prices_in_force_are_those_of_a_plain_search(rows: list[PriceRow], day: date, order: object) -> None:
    def replaced(row: PriceRow) -> bool:
        return any(
            (other.product, other.seller, other.kind, other.tax)
            == (row.product, row.seller, row.kind, row.tax)
            and START <= other.date <= day
            and (other.date, other.line) > (row.date, row.line)
            for other in rows
            if other.region == "EU"
        )

    plainly = {r.line for r in rows if r.region == "EU" and r.in_force(day) and not replaced(r)}
    shuffled = list(rows)
    order.shuffle(shuffled)  # type: ignore[attr-defined]
    found = prices_in_force(shuffled, "EU", day)
    assert {row.line for prices in found.values() for row in prices} == plainly
    assert all(row.product == product for product, prices in found.items() for row in prices)


@settings(deadline=None)
@given(SHOPS, DAYS)
def test_a_fall_in_force_is_a_fall_and_a_price_in_force(rows: list[PriceRow], day: date) -> None:
    all_falls = price_falls(rows, "EU", START - timedelta(days=1), day)
    for product in ("a", "b"):
        held = prices_in_force(rows, "EU", day).get(product, [])
        expected = [f for f in all_falls if f.now in held]
        assert falls_in_force(rows, product, "EU", day) == expected
        for fall in expected:
            assert fall.by > 0
            assert (fall.before.date, fall.before.line) < (fall.now.date, fall.now.line)
            assert newest(rows, "EU", day)[
                (product, "EU", fall.now.seller, fall.now.kind, "EUR", fall.now.tax)
            ] == fall.now  # fmt: skip


@settings(deadline=None)
@given(RATES, CODES, CODES, DAYS, st.integers(1, 10**8))
def test_conversion_never_looks_ahead_and_gives_its_way(
    rows: list[RateRow], base: str, quote: str, day: date, units: int
) -> None:
    money = Money(Decimal(units).scaleb(-2), base)
    found = RateTable(rows).convert(money, quote, day)
    assert found == RateTable([row for row in rows if row.date <= day]).convert(money, quote, day)
    if isinstance(found, Converted):
        assert len(found.via) <= 2
        assert all(row.date <= day and row in rows for row in found.via)
        currency, factor = base, 1.0
        for row in found.via:
            forward = row.base == currency
            factor *= float(row.rate) if forward else 1 / float(row.rate)
            currency = row.quote if forward else row.base
        assert currency == quote
        assert abs(float(found.money.amount) / (float(money.amount) * factor) - 1) < 1e-12
    else:
        assert base != quote
        assert not any({row.base, row.quote} == {base, quote} and row.date <= day for row in rows)


@settings(deadline=None)
@given(RATES, CODES, CODES, DAYS, st.integers(1, 10**8))
def test_there_and_back_is_the_amount_of_before(
    rows: list[RateRow], base: str, quote: str, day: date, units: int
) -> None:
    table = RateTable(rows)
    money = Money(Decimal(units).scaleb(-minor_digits(base)), base)
    there = table.convert(money, quote, day)
    assume(isinstance(there, Converted))
    assert isinstance(there, Converted)
    back = table.convert(there.money, base, day)
    assert isinstance(back, Converted)
    assert to_minor_units(back.money).amount == money.amount


@settings(deadline=None)
@given(st.integers(1, 10**8), st.integers(0, 10_000))
def test_tax_in_and_out_again_is_the_amount_of_before(cents: int, rate: int) -> None:
    table = TaxTable([TaxRow(START, "EU", Decimal(rate).scaleb(-2), "in")])
    amount = Decimal(cents).scaleb(-2)
    taxed = table.with_tax(amount, "EU", START)
    assert isinstance(taxed, Taxed)
    assert taxed.amount >= amount
    again = table.without_tax(taxed.amount, "EU", START)
    assert isinstance(again, Taxed)
    assert to_minor_units(Money(again.amount, "EUR")).amount == amount


@settings(deadline=None)
@given(st.sampled_from(currency_codes()), st.decimals(-(10**9), 10**9, allow_nan=False, allow_infinity=False))
def test_a_printed_amount_is_within_half_a_minor_unit_and_prints_the_same_again(
    currency: str, amount: Decimal
) -> None:
    text = amount_text(amount, currency)
    half = Decimal("0.5").scaleb(-minor_digits(currency))
    assert abs(Decimal(text) - amount) <= half
    assert amount_text(Decimal(text), currency) == text
    assert not (text.startswith("-") and Decimal(text) == 0)
