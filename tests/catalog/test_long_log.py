"""A long log in columns answers each question as looking through all its rows does."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from price_logs import LINE, log, logs
from spindlewise.catalog import long_log as module
from spindlewise.catalog.checks import price_jump
from spindlewise.catalog.finding import first_days
from spindlewise.catalog.long_log import LongLog, long_log
from spindlewise.catalog.price_log import newest, prices_in_force, read_price_log
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.price_rows import (
    rows_dated_outside,
    rows_not_among,
    rows_of,
    rows_of_all,
    with_one_more,
    without_those,
)

DAYS = st.dates(date(2025, 12, 30), date(2026, 10, 12))


def both(raw: bytes) -> tuple[LongLog, tuple[PriceRow, ...]]:
    found = long_log(raw)
    assert found is not None
    return found, tuple(found)


def same_answers(columns: Sequence[PriceRow], rows: Sequence[PriceRow], day: date) -> None:
    for region in ("EU", "US", "XX"):
        standing = newest(columns, region, day)
        assert standing == newest(rows, region, day)
        assert list(standing) == list(newest(rows, region, day))  # in the same order
        assert prices_in_force(columns, region, day) == prices_in_force(rows, region, day)
    for product in ("heron", "siskin", "dunlin"):
        assert list(rows_of(columns, product)) == list(rows_of(rows, product))
    assert rows_of_all(columns, {"heron", "grebe-2"}) == rows_of_all(rows, {"heron", "grebe-2"})
    for known in ({"heron", "EU"}, set()):
        for part in ("product", "region"):
            assert list(rows_not_among(columns, part, known)) == list(rows_not_among(rows, part, known))
    spans = (date(2026, 10, 2), day), (date(2000, 1, 1), date(2099, 1, 1))
    for first, last in spans:
        assert list(rows_dated_outside(columns, first, last)) == list(rows_dated_outside(rows, first, last))
    one, other = worlds.catalog([], columns), worlds.catalog([], rows)
    object.__setattr__(one, "prices", columns)
    assert first_days(one) == first_days(other)
    assert list(price_jump.check(one)) == list(price_jump.check(other))


@given(logs(right=True), DAYS)
@settings(deadline=None, max_examples=200)
def test_every_answer_is_that_of_looking_through_the_rows(raw: bytes, day: date) -> None:
    same_answers(*both(raw), day)


@given(logs(right=True), DAYS, st.sampled_from(["5", "499.00", "5000.5"]), st.integers(0, 1))
@settings(deadline=None, max_examples=100)
def test_so_it_is_of_a_log_with_a_row_more_and_without_those_of_a_product(
    raw: bytes, day: date, amount: str, line: int
) -> None:
    columns, rows = both(raw)
    row = worlds.price("heron", amount, line=line, date=date(2026, 10, 2), seller="Löwe, Söhne")
    for found, plain in (
        (columns, rows),
        (without_those(columns, "heron", "EU"), without_those(rows, "heron", "EU")),
    ):
        more, plainly = with_one_more(found, row), with_one_more(plain, row)
        assert isinstance(more, LongLog)
        assert tuple(more) == tuple(plainly)
        same_answers(more, plainly, day)
    assert tuple(columns) == rows  # as before


def test_rows_are_had_by_index_and_in_slices(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "_BATCH", 2)
    columns, rows = both(log(*(LINE.replace("499", str(amount)) for amount in range(100, 107))))
    assert len(rows) == 7
    assert columns[0] == rows[0]
    assert columns[-1] == rows[-1]
    assert columns[2:6:2] == rows[2:6:2]
    assert columns == rows
    assert rows == columns
    assert columns != rows[:-1]
    assert columns != "prices"
    with pytest.raises(IndexError):
        columns[7]


def test_amounts_have_the_decimals_of_their_currency() -> None:
    columns, _ = both(log(LINE.replace("499.00", "499"), LINE.replace("EU,EUR,499.00", "JP,JPY,64000")))
    assert [str(row.amount) for row in columns] == ["499.00", "64000"]


def test_an_amount_too_large_for_columns_is_a_row_among_rows() -> None:
    columns, rows = both(log(LINE))
    row = worlds.price("heron", Decimal("99999999999999999.00"), line=0)
    assert with_one_more(columns, row) == (*rows, row)


def test_a_log_is_read_so_from_a_size_on_and_a_bad_one_is_told_line_by_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("spindlewise.catalog.price_log.LARGE_BYTES", 10)
    path = tmp_path / "prices.csv"
    path.write_bytes(log(LINE, LINE.replace("499.00", "489.00")))
    rows, problems = read_price_log(path, "prices.csv")
    assert isinstance(rows, LongLog)
    assert [row.line for row in rows] == [2, 3]
    assert problems == []
    path.write_bytes(log(LINE, LINE.replace("EUR", "EUX")))
    rows, problems = read_price_log(path, "prices.csv")
    assert [row.line for row in rows] == [2]
    assert [p.place.line for p in problems if p.place] == [3]
    assert read_price_log(tmp_path / "none.csv", "none.csv")[1][0].rule == "missing-file"
