"""The price log: reading it strictly, appending to it, and what it says on a day."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from spindlewise.catalog.durable import CannotWrite
from spindlewise.catalog.price_log import (
    append_price,
    falls_in_force,
    newest,
    price_falls,
    prices_in_force,
    read_price_log,
    row_line,
    with_amount,
)
from spindlewise.catalog.price_row import HEADER, Kind, PriceRow, Tax
from spindlewise.problems import render

TODAY = date(2026, 11, 20)
GOOD = "2026-11-18,brellowick-ferrowen,EU,EUR,749.00,in,offer,Saltgate Post,2026-11-24,shop page"
OFFER = PriceRow(
    2,
    date(2026, 11, 18),
    "brellowick-ferrowen",
    "EU",
    "EUR",
    Decimal("749.00"),
    "in",
    "offer",
    "Saltgate Post",
    date(2026, 11, 24),
    "shop page",
)


def _log(folder: Path, *lines: str, end: str = "\n") -> Path:
    path = folder / "prices.csv"
    path.write_text("\n".join([",".join(HEADER), *lines]) + end, encoding="utf-8")
    return path


def _printed(folder: Path, *lines: str) -> list[str]:
    """The problems of a log, without file and level."""
    problems = read_price_log(_log(folder, *lines), "prices.csv")[1]
    return [p.replace("prices.csv:", "", 1) for p in render(problems, "plain").splitlines()]


def _seen(
    line: int,
    day: date,
    amount: str,
    seller: str = "Saltgate Post",
    *,
    product: str = "brellowick-ferrowen",
    region: str = "EU",
    tax: Tax = "in",
    kind: Kind = "street",
    until: date | None = None,
) -> PriceRow:
    return PriceRow(
        line, day, product, region, "EUR", Decimal(amount), tax, kind, seller, until, "shop page"
    )  # fmt: skip


def test_a_log_is_read_row_by_row(tmp_path: Path) -> None:
    rows, problems = read_price_log(_log(tmp_path, GOOD), "prices.csv")
    assert problems == []
    assert rows == [OFFER]


def test_a_late_entry_is_no_problem_and_keeps_its_line(tmp_path: Path) -> None:
    earlier = GOOD.replace("2026-11-18", "2026-11-01")
    rows, problems = read_price_log(_log(tmp_path, GOOD, earlier), "prices.csv")
    assert problems == []
    assert [(row.line, row.date.day) for row in rows] == [(2, 18), (3, 1)]


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (
            GOOD.replace("2026-11-18", "18.11.2026"),
            "2:1: error: date: found '18.11.2026', which is no date; "
            "write the day as YYYY-MM-DD, for instance 2026-11-18 (bad-date)",
        ),
        (
            GOOD.replace("2026-11-24", "2026-11-31"),
            "2:69: error: valid_until: there is no day 2026-11-31; "
            "correct the month or the day (impossible-date)",
        ),
        (
            GOOD.replace("749.00", '"749,00"'),
            "2:39: error: amount: found '749,00', which is not a plain number; write 749.00 (bad-number)",
        ),
        (
            GOOD.replace("749.00", "749.005"),
            "2:39: error: amount: found 749.005, but EUR has 2 decimals; write 749.01 (minor-unit)",
        ),
        (
            GOOD.replace("749.00", "-749.00"),
            "2:39: error: amount: found -749.00; write more than 0; unknown is no row at all (not-positive)",
        ),
        (
            GOOD.replace(",EUR,", ",eur,"),
            "2:35: error: currency: found 'eur', which is no currency in circulation; "
            "did you mean EUR? (unknown-currency)",
        ),
        (
            GOOD.replace(",in,", ",inn,"),
            "2:46: error: tax: found 'inn'; allowed: in, out; did you mean in? (unknown-word)",
        ),
        (
            GOOD.replace(",offer,", ",offered,"),
            "2:49: error: kind: found 'offered'; allowed: list, street, offer, clearance; "
            "did you mean offer? (unknown-word)",
        ),
        (
            GOOD.replace("2026-11-24", "2026-11-17"),
            "2:69: error: valid_until: 2026-11-17 lies before 2026-11-18; "
            "write the last day on which it holds (expired-at-once)",
        ),
        (
            GOOD.replace("2026-11-24", ""),
            "2:69: error: valid_until: an offer holds for a time, and none is written; "
            "write its last day, or the kind street (endless-offer)",
        ),
        (
            GOOD.replace("Saltgate Post", ""),
            "2:55: error: seller: is empty; write a value (empty-field)",
        ),
        (
            GOOD.replace("brellowick-ferrowen", "x" * 61),
            "2:12: error: product: is 61 characters long, 60 at most (long-field)",
        ),
        (
            GOOD.replace(",EU,", ",Europe-and-more,"),
            "2:32: error: region: is 15 characters long, 8 at most (long-field)",
        ),
        (
            GOOD.replace("shop page", "shop page "),
            "2:80: error: source: found 'shop page '; take the space at its end away (stray-space)",
        ),
    ],
)
def test_each_slip_is_said_at_its_place_and_the_row_is_no_price(
    tmp_path: Path, wrong: str, said: str
) -> None:
    rows, problems = read_price_log(_log(tmp_path, wrong), "prices.csv")
    assert rows == []
    assert _printed(tmp_path, wrong) == [said]
    assert len(problems) == 1


def test_all_slips_of_all_lines_are_said_in_one_go(tmp_path: Path) -> None:
    wrong = '2026-2-30,,EU,EURO,"1,0",both,sale,,2026-13-01,'
    printed = _printed(tmp_path, wrong, GOOD, wrong)
    assert [p.partition(" error: ")[2].partition(":")[0] for p in printed] == [
        "date", "product", "currency", "amount", "tax", "kind", "seller", "valid_until", "source",
    ] * 2  # fmt: skip
    assert [p.partition(" ")[0] for p in printed[:9]] == [
        "2:1:", "2:11:", "2:15:", "2:20:", "2:26:", "2:31:", "2:36:", "2:37:", "2:48:",
    ]  # fmt: skip
    assert [row.line for row in read_price_log(tmp_path / "prices.csv", "prices.csv")[0]] == [3]


def test_the_same_row_twice_counts_once_and_is_said(tmp_path: Path) -> None:
    written_otherwise = GOOD.replace("Saltgate Post", '"Saltgate Post"')
    assert _printed(tmp_path, GOOD, written_otherwise) == [
        "3:1: error: date: the same row stands in line 2 already; take one of them out (repeated-row)"
    ]
    assert [row.line for row in read_price_log(tmp_path / "prices.csv", "prices.csv")[0]] == [2]


def test_a_torn_log_still_tells_its_whole_rows(tmp_path: Path) -> None:
    path = _log(tmp_path, GOOD, "2026-11-19,brellow", end="")
    rows, problems = read_price_log(path, "prices.csv")
    assert rows == [OFFER]
    assert [(p.rule, p.place.line) for p in problems if p.place] == [("torn-line", 3)]


def test_a_first_price_begins_the_log_with_its_header(tmp_path: Path) -> None:
    path = tmp_path / "prices.csv"
    append_price(path, OFFER)
    assert path.read_text(encoding="utf-8") == ",".join(HEADER) + "\n" + GOOD + "\n"


def test_appending_rewrites_nothing(tmp_path: Path) -> None:
    path = _log(tmp_path, "what stands here, right or wrong,")
    before = path.read_bytes()
    append_price(path, OFFER)
    assert path.read_bytes() == before + GOOD.encode() + b"\n"


def test_nothing_is_appended_to_a_torn_log(tmp_path: Path) -> None:
    path = _log(tmp_path, GOOD, end="")
    with pytest.raises(CannotWrite, match="its last line is torn"):
        append_price(path, OFFER)
    assert path.read_text(encoding="utf-8").endswith(GOOD)


def test_a_field_that_runs_over_the_line_is_never_written(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="one line"):
        append_price(tmp_path / "prices.csv", replace(OFFER, seller="Saltgate\nPost"))
    assert not (tmp_path / "prices.csv").exists()


def test_what_needs_quotes_is_quoted() -> None:
    line = row_line(replace(OFFER, seller='Locks, "Nine" & Sons', source="=2+3"))
    assert '"Locks, ""Nine"" & Sons",2026-11-24,=2+3\n' in line


def test_the_newest_row_of_an_offer_counts_and_of_one_day_the_lower_one() -> None:
    rows = [
        _seen(2, date(2026, 11, 1), "899.00"),
        _seen(3, date(2026, 11, 10), "849.00"),
        _seen(4, date(2026, 11, 10), "839.00"),
        _seen(5, date(2026, 10, 1), "879.00"),  # entered late
    ]
    assert [row.line for row in newest(rows, "EU", TODAY).values()] == [4]
    assert [row.line for row in newest(reversed(rows), "EU", TODAY).values()] == [4]
    assert [row.line for row in newest(rows, "EU", date(2026, 11, 9)).values()] == [2]


def test_sellers_kinds_tax_bases_and_currencies_stand_side_by_side() -> None:
    first = _seen(2, date(2026, 11, 1), "899.00")
    rows = [
        first,
        replace(first, line=3, seller="Nine Locks Wheelhouse"),
        replace(first, line=4, kind="list"),
        replace(first, line=5, tax="out"),
        replace(first, line=6, currency="GBP"),
        replace(first, line=7, region="US"),
        replace(first, line=8, product="osmeryd-avessin"),
    ]
    held = prices_in_force(rows, "EU", TODAY)
    assert {product: [row.line for row in prices] for product, prices in held.items()} == {
        "brellowick-ferrowen": [2, 3, 4, 5, 6],
        "osmeryd-avessin": [8],
    }


def test_an_expired_price_is_no_price_and_no_older_one_comes_back() -> None:
    rows = [
        _seen(2, date(2026, 11, 1), "799.00", kind="offer", until=date(2026, 12, 31)),
        _seen(3, date(2026, 11, 10), "749.00", kind="offer", until=date(2026, 11, 19)),
    ]
    assert prices_in_force(rows, "EU", date(2026, 11, 19))["brellowick-ferrowen"] == [rows[1]]
    assert prices_in_force(rows, "EU", TODAY) == {}


def test_a_price_dated_later_is_not_seen() -> None:
    rows = [_seen(2, date(2026, 11, 21), "1.00")]
    assert prices_in_force(rows, "EU", TODAY) == {}
    assert list(prices_in_force(rows, "EU", date(2026, 11, 21))) == ["brellowick-ferrowen"]


FALLING = [
    _seen(2, date(2026, 9, 1), "899.00"),
    _seen(3, date(2026, 10, 1), "849.00"),
    _seen(4, date(2026, 10, 15), "869.00"),  # a rise
    _seen(5, date(2026, 11, 18), "749.00"),
    _seen(6, date(2026, 11, 19), "699.00", "Nine Locks Wheelhouse"),  # first seen there: no fall
    _seen(7, date(2026, 11, 19), "599.00", tax="out"),  # another tax basis: no fall
    _seen(8, date(2026, 11, 30), "499.00"),  # not yet
]


def test_a_fall_is_stated_against_the_observation_just_before_it() -> None:
    falls = price_falls(FALLING, "EU", date(2026, 9, 1), TODAY)
    assert [(fall.now.line, fall.before.line, fall.by) for fall in falls] == [
        (3, 2, Decimal("50.00")),
        (5, 4, Decimal("120.00")),
    ]
    assert falls[1].share_pct == pytest.approx(120 / 869 * 100)


def test_only_falls_since_a_day_are_told_and_only_of_the_region() -> None:
    assert [f.now.line for f in price_falls(FALLING, "EU", date(2026, 10, 1), TODAY)] == [5]
    assert price_falls(FALLING, "EU", date(2026, 11, 18), TODAY) == []
    assert price_falls(FALLING, "US", date(2026, 1, 1), TODAY) == []


def test_the_falls_in_force_are_those_that_a_buyer_can_still_have() -> None:
    assert [f.now.line for f in falls_in_force(FALLING, "brellowick-ferrowen", "EU", TODAY)] == [5]
    assert falls_in_force(FALLING, "brellowick-ferrowen", "EU", date(2026, 10, 20)) == []  # risen again
    assert falls_in_force(FALLING, "osmeryd-avessin", "EU", TODAY) == []


def test_a_fall_that_has_expired_is_in_force_no_more() -> None:
    rows = [
        _seen(2, date(2026, 11, 1), "799.00", kind="offer", until=date(2026, 11, 5)),
        _seen(3, date(2026, 11, 10), "749.00", kind="offer", until=date(2026, 11, 12)),
    ]
    assert len(falls_in_force(rows, "brellowick-ferrowen", "EU", date(2026, 11, 12))) == 1
    assert falls_in_force(rows, "brellowick-ferrowen", "EU", TODAY) == []


def test_what_if_changes_the_amount_only() -> None:
    assert with_amount(OFFER, Decimal("699.00")) == replace(OFFER, amount=Decimal("699.00"))
