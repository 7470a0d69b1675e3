"""A large log read by columns gives the rows that the strict reader gives, or leaves it to that reader."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.catalog import price_log
from spindlewise.catalog.large_log import read_large_log
from spindlewise.catalog.price_log import read_price_log
from spindlewise.catalog.price_row import HEADER

DEMO = Path(__file__).parents[2] / "catalog" / "prices.csv"
HEAD = ",".join(HEADER)
LINE = "2026-10-01,heron,EU,EUR,499.00,in,street,Quayside Wheels,,seen"


def log(*lines: str, head: str = HEAD, end: str = "\n") -> bytes:
    return ("\n".join([head, *lines]) + end).encode()


def strict(raw: bytes, folder: Path) -> tuple[list, list]:
    path = folder / "prices.csv"
    path.write_bytes(raw)
    return read_price_log(path, "prices.csv")


def test_the_demos_log_reads_the_same_either_way(tmp_path: Path) -> None:
    raw = b"\n".join(line for line in DEMO.read_bytes().split(b"\n") if b'"' not in line)
    rows, problems = strict(raw, tmp_path)

    assert problems == []
    assert len(rows) > 100
    assert read_large_log(raw) == rows


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"\xff" + log(LINE),
        log(LINE, end=""),
        log(LINE, head="date,product"),
        log(LINE, ""),
        log(LINE, LINE),
        log(LINE + ",more"),
        log(LINE.replace(",seen", "")),
        log(LINE.replace("seen", '"seen, twice"')),
        log(LINE.replace("seen", "se\u200ben")),
        log(LINE.replace("seen", "x" * 4000)),
        log(LINE.replace("seen", " seen")),
        log(LINE).replace(b"\n", b"\r\n"),
        log(LINE.replace("2026-10-01", "2026-13-01")),
        log(LINE.replace("EUR", "EUX")),
        log(LINE.replace("499.00", "499,00")),
        log(LINE.replace("499.00", "499.001")),
        log(LINE.replace("499.00", "0")),
        log(LINE.replace("street", "strete")),
        log(LINE.replace("street", "offer")),
        log(LINE.replace("Wheels,,", "Wheels,2026-09-30,")),
    ],
)
def test_what_is_not_plainly_right_is_left_to_the_strict_reader(raw: bytes) -> None:
    assert read_large_log(raw) is None


fields = st.tuples(
    st.sampled_from(["2026-10-01", "2026-10-02", "2026-02-30"]),
    st.sampled_from(["heron", "siskin", "", "x" * 61]),
    st.sampled_from(["EU", "US"]),
    st.sampled_from(["EUR", "JPY", "eur"]),
    st.sampled_from(["499.00", "499", "5", "-1", "1e3", "499.5"]),
    st.sampled_from(["in", "out"]),
    st.sampled_from(["street", "offer", "list"]),
    st.sampled_from(["Quayside Wheels", "=1+1", "Café"]),
    st.sampled_from(["", "2026-10-05", "2026-09-01"]),
    st.sampled_from(["seen", "a page"]),
)


@given(st.lists(fields.map(",".join), max_size=6))
@settings(deadline=None, max_examples=120)
def test_where_it_speaks_it_says_what_the_strict_reader_says(
    tmp_path_factory: pytest.TempPathFactory, lines: list[str]
) -> None:
    raw = log(*lines)
    rows, problems = strict(raw, tmp_path_factory.mktemp("log"))
    found = read_large_log(raw)

    assert found is None or (found, []) == (rows, problems)
    assert found is not None or problems


def test_a_large_log_takes_this_way_and_a_large_bad_one_is_told_line_by_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(price_log, "LARGE_BYTES", 10)
    good = log(LINE, LINE.replace("499.00", "489.00"))
    assert [row.line for row in strict(good, tmp_path)[0]] == [2, 3]

    rows, problems = strict(log(LINE, LINE.replace("EUR", "EUX")), tmp_path)
    assert [row.line for row in rows] == [2]
    assert [p.place.line for p in problems] == [3]
    assert read_price_log(tmp_path / "none.csv", "none.csv")[1][0].rule == "missing-file"
