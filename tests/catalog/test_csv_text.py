"""Strict CSV: the place of every field, and every problem of a file to the letter."""

import errno
import os
from pathlib import Path

import pytest

from spindlewise.catalog import csv_text
from spindlewise.catalog.csv_text import LONGEST_LINE, Row, each_row, read_rows, rows_of, split_line
from spindlewise.problems import Place, render

HEADER = ("date", "product", "note")
FIRST = b"date,product,note\n"


def _printed(raw: bytes) -> str:
    return render(rows_of(raw, "log.csv", HEADER)[1], "plain")


def _fields(raw: bytes) -> list[tuple[str, ...]]:
    return [row.fields for row in rows_of(raw, "log.csv", HEADER)[0]]


def test_rows_keep_their_lines_and_their_text() -> None:
    rows, problems = rows_of(FIRST + b'2026-11-18,ferrowen,"a, b"\nx,y,\n', "log.csv", HEADER)
    assert problems == []
    assert rows == [
        Row("log.csv", 2, ("2026-11-18", "ferrowen", "a, b"), '2026-11-18,ferrowen,"a, b"'),
        Row("log.csv", 3, ("x", "y", ""), "x,y,"),
    ]


@pytest.mark.parametrize(
    ("line", "columns"),
    [
        ("a,bc,d", [1, 3, 6]),
        ('"a","b,c",d', [1, 5, 11]),  # quotes that were not needed count too
        ('"a""b",,""', [1, 8, 9]),
        ("å,日本,x", [1, 3, 6]),  # characters, not bytes
    ],
)
def test_a_field_begins_where_an_editor_shows_it(line: str, columns: list[int]) -> None:
    rows, problems = rows_of(FIRST + line.encode() + b"\n", "log.csv", HEADER)
    assert problems == []
    assert [rows[0].place(index) for index in range(3)] == [Place("log.csv", 2, c) for c in columns]


def test_crlf_and_a_byte_order_mark_say_nothing_about_the_data() -> None:
    plain = rows_of(FIRST + b"a,b,c\nd,e,f\n", "log.csv", HEADER)
    saved_elsewhere = b"\xef\xbb\xbf" + FIRST.replace(b"\n", b"\r\n") + b"a,b,c\r\nd,e,f\n"
    assert rows_of(saved_elsewhere, "log.csv", HEADER) == plain


@pytest.mark.parametrize(
    ("raw", "printed"),
    [
        (b"", "log.csv:1:1: error: is empty; begin it with the line date,product,note (empty-file)\n"),
        (
            b"\xef\xbb\xbf",
            "log.csv:1:1: error: is empty; begin it with the line date,product,note (empty-file)\n",
        ),
        (
            b"day,product,note\n1,2,3,4\n",
            "log.csv:1:1: error: the header is 'day,product,note'; write date,product,note (csv-header)\n",
        ),
        (
            b"date;product;note\n2026-11-18;x;y\n",
            "log.csv:1:1: error: the header is 'date;product;note'; "
            "part the fields by commas, in every line (csv-header)\n",
        ),
        (
            b"\nday\n",
            "log.csv:1:1: error: the line is empty; take it out (empty-line)\n",
        ),
        (
            FIRST + b"a,b,c\n\nd,e\nf,g,h,i\nlone\n",
            "log.csv:3:1: error: the line is empty; take it out (empty-line)\n"
            "log.csv:4:1: error: 2 fields, 3 are needed: date,product,note; "
            "leave no field out (field-count)\n"
            "log.csv:5:1: error: 4 fields, 3 are needed: date,product,note; "
            "put a field that holds a comma in quotes (field-count)\n"
            "log.csv:6:1: error: 1 field, 3 are needed: date,product,note; "
            "leave no field out (field-count)\n",
        ),
        (
            FIRST + "å,b,\xa0c\n".encode() + b"a,\x1b[31m,c\na,b\x0bc,d\na\rb,c,d\n",
            "log.csv:2:5: error: a character that cannot be seen (U+00A0); "
            "write visible characters and plain spaces (invisible-character)\n"
            "log.csv:3:3: error: a character that cannot be seen (U+001B); "
            "write visible characters and plain spaces (invisible-character)\n"
            "log.csv:4:4: error: a character that cannot be seen (U+000B); "
            "write visible characters and plain spaces (invisible-character)\n"
            "log.csv:5:2: error: a character that cannot be seen (U+000D); "
            "write visible characters and plain spaces (invisible-character)\n",
        ),
        (
            FIRST + "å,".encode() + b"\xff,c\nd,e\xe5,f\n",
            "log.csv:2:3: error: the byte 0xFF is not UTF-8; save the file as UTF-8 (not-utf8)\n"
            "log.csv:3:4: error: the byte 0xE5 is not UTF-8; save the file as UTF-8 (not-utf8)\n",
        ),
    ],
    ids=["nothing", "mark-only", "header", "semicolons", "no-header", "counts", "invisible", "bytes"],
)
def test_what_is_wrong_with_lines_is_said_to_the_letter(raw: bytes, printed: str) -> None:
    assert _printed(raw) == printed


@pytest.mark.parametrize(
    ("line", "column"),
    [
        ('a,b"c,d', 4),  # a quote within a plain field
        ('a,"b,c', 3),  # never closed: where it opens
        ('a,"b"c,d', 5),  # closed, but something follows
        ('a,"b" ,d', 5),
        ('a,"b""c', 3),
        ('"', 1),
        ('a,b,c"', 6),
    ],
)
def test_a_quote_that_is_out_of_place_is_pointed_at(line: str, column: int) -> None:
    assert _printed(FIRST + line.encode() + b"\n") == (
        f"log.csv:2:{column}: error: a quote that opens or closes no field; put the whole field in quotes, "
        'and write each quote in it twice: "a ""b"" c" (csv-quoting)\n'
    )


@pytest.mark.parametrize("torn", [b"2026-1", b"2026-11-18,ferrowen,note", b'x,"y', b"x,\xe6\x97", b"x\r"])
def test_of_a_torn_last_line_only_that_is_said(torn: bytes) -> None:
    raw = FIRST + b"a,b,c\n" + torn
    assert _printed(raw) == (
        "log.csv:3:1: error: the last line has no end; complete or remove it; "
        "`spindlewise price repair` removes it from a price log (torn-line)\n"
    )
    assert _fields(raw) == [("a", "b", "c")]


def test_a_header_that_is_torn_is_a_torn_line() -> None:
    assert "log.csv:1:1: error: the last line has no end" in _printed(b"date,pro")
    assert len(_printed(b"date,pro").splitlines()) == 1


def test_a_line_may_be_long_but_not_endless() -> None:
    most = LONGEST_LINE - len("a,b,")
    assert _fields(FIRST + b"a,b," + b"c" * most + b"\n") == [("a", "b", "c" * most)]
    assert _printed(FIRST + b"a,b,c" + b"c" * most + b"\n") == (
        "log.csv:2:1: error: the line is 4001 characters long, 4000 at most (long-line)\n"
    )


def test_many_quotes_in_a_long_line_are_read_in_no_time() -> None:
    """A pattern that tries again and again would take years for this one."""
    fields, fault = split_line('"' + '""' * 1900 + "x")
    assert (fields, fault) == ([], 0)


def test_a_file_that_is_not_there_or_is_none_is_a_problem(tmp_path: Path) -> None:
    _, problems = read_rows(tmp_path / "rates.csv", "rates.csv", HEADER)
    assert render(problems, "plain") == (
        "rates.csv:1:1: error: is not there; begin it with the line date,product,note (missing-file)\n"
    )
    _, problems = read_rows(tmp_path, "rates.csv", HEADER)
    assert render(problems, "plain") == "rates.csv:1:1: error: is not a file (unreadable-file)\n"


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "rates.csv")
    _, problems = read_rows(tmp_path / "rates.csv", "rates.csv", HEADER)
    assert [p.rule for p in problems] == ["unreadable-file"]


def test_a_file_that_cannot_be_read_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "rates.csv").write_bytes(FIRST)

    def refuse(_path: Path) -> bytes:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr(Path, "read_bytes", refuse)
    _, problems = read_rows(tmp_path / "rates.csv", "rates.csv", HEADER)
    assert render(problems, "plain") == (
        "rates.csv:1:1: error: cannot be read: Permission denied (unreadable-file)\n"
    )


def test_a_file_that_is_far_too_large_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(csv_text, "LARGEST_BYTES", 2 * 1024**2)
    with (tmp_path / "rates.csv").open("wb") as file:
        file.truncate(2 * 1024**2 + 1)
    _, problems = read_rows(tmp_path / "rates.csv", "rates.csv", HEADER)
    assert render(problems, "plain") == (
        "rates.csv:1:1: error: is larger than 2 MiB; split it (file-too-large)\n"
    )


def test_a_file_is_read_with_its_shown_name(tmp_path: Path) -> None:
    (tmp_path / "log.csv").write_bytes(FIRST + b"a,b,c\n")
    rows, problems = read_rows(tmp_path / "log.csv", "catalog/log.csv", HEADER)
    assert (rows[0].place(1), problems) == (Place("catalog/log.csv", 2, 3), [])


def test_a_file_of_nothing_but_wrong_lines_is_not_read_to_its_end() -> None:
    rows, problems = rows_of(b"a,b\n1,2\n" + b"\n" * 5000 + b"3,4\n", "a.csv", ("a", "b"))
    assert [row.fields for row in rows] == [("1", "2")]
    assert len(problems) == 1002
    assert problems[-1].rule == "too-many-problems"
    assert "it was not read any further" in problems[-1].message
    rows, problems = rows_of(b"a,b\n" + b"\n" * 1000 + b"3,4\n", "a.csv", ("a", "b"))
    assert [row.fields for row in rows] == [("3", "4")]
    assert len(problems) == 1000


def test_rows_are_made_one_at_a_time_and_problems_told_as_they_are_met() -> None:
    problems: list = []
    rows = each_row(FIRST + b"a,b,c\nd,e\nf,g,h\n", "log.csv", HEADER, problems)
    assert next(rows).fields == ("a", "b", "c")
    assert problems == []
    assert next(rows).fields == ("f", "g", "h")
    assert [problem.rule for problem in problems] == ["field-count"]
    assert next(rows, None) is None
