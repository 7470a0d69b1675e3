"""RFC 4180, Shafranovich (2005), "Common Format and MIME Type for CSV Files", section 2."""

import csv

import pytest

from spindlewise.catalog.csv_text import rows_of, split_line

HEADER = ("field_name", "other", "third")


def _values(line: str) -> list[str]:
    fields, fault = split_line(line)
    assert fault is None
    return [value for _, value in fields]


@pytest.mark.parametrize(
    ("line", "values"),
    [
        ("aaa,bbb,ccc", ["aaa", "bbb", "ccc"]),
        ('"aaa","bbb","ccc"', ["aaa", "bbb", "ccc"]),
        ("zzz,yyy,xxx", ["zzz", "yyy", "xxx"]),
        ('"aaa","b""bb","ccc"', ["aaa", 'b"bb', "ccc"]),
        ('"a,b",c,', ["a,b", "c", ""]),
        (" a , b ", [" a ", " b "]),  # 2.4: spaces are part of a field
    ],
)
def test_the_examples_of_section_2_read_as_written_and_as_the_csv_module_reads_them(
    line: str, values: list[str]
) -> None:
    assert _values(line) == values == next(csv.reader([line], strict=True))


def test_the_last_record_may_lack_its_end_there_but_is_torn_here() -> None:
    """Section 2.2 allows it; an append-only log must not, since a crash leaves just that."""
    rows, problems = rows_of(b"field_name,other,third\r\naaa,bbb,ccc\r\nzzz,yyy,xxx", "x.csv", HEADER)
    assert [row.fields for row in rows] == [("aaa", "bbb", "ccc")]
    assert [(p.rule, p.place.line if p.place else 0) for p in problems] == [("torn-line", 3)]


def test_a_field_over_two_lines_is_allowed_there_but_not_here() -> None:
    """Section 2.6 allows line breaks in quotes; here one record is one line."""
    rows, problems = rows_of(b'field_name,other,third\r\n"aaa","b\r\nbb","ccc"\r\n', "x.csv", HEADER)
    assert rows == []
    assert [(p.rule, p.place.line, p.place.column) for p in problems if p.place] == [
        ("csv-quoting", 2, 7),
        ("csv-quoting", 3, 3),
    ]


def test_crlf_ends_lines_as_a_line_feed_does() -> None:
    with_crlf = rows_of(b"field_name,other,third\r\na,b,c\r\n", "x.csv", HEADER)
    assert with_crlf == rows_of(b"field_name,other,third\na,b,c\n", "x.csv", HEADER)
    assert with_crlf[0][0].fields == ("a", "b", "c")
