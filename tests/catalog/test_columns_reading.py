"""A long log read by columns says what the strict reader says, or leaves it to that reader."""

from pathlib import Path

import pytest
from hypothesis import given, settings

from price_logs import LINE, log, logs, strict
from spindlewise.catalog import columns_reading
from spindlewise.catalog.columns_reading import last_field, plain_text, read_columns
from spindlewise.catalog.long_log import long_log

DEMO = Path(__file__).parents[2] / "catalog" / "prices.csv"


def test_the_demos_log_reads_the_same_either_way(tmp_path: Path) -> None:
    raw = DEMO.read_bytes()
    rows, problems = strict(raw, tmp_path)
    assert problems == []
    assert len(rows) > 100
    assert long_log(raw) == rows


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"\xff" + log(LINE),
        log(LINE).replace(b"seen", b"se\xffen"),
        log(LINE, end=""),
        log(LINE, LINE, end="")[:-9],
        log(LINE, head="date,product"),
        log(LINE, ""),
        log("", LINE),
        log(LINE, LINE),
        log(LINE, LINE.replace("seen", '"seen"')),
        log(LINE + ",more"),
        log(LINE + ",more", LINE.replace(",seen", "")),
        log(LINE.replace(",seen", "")),
        log(LINE.replace("seen", 'seen "twice"')),
        log(LINE.replace("seen", "se\u200ben")),
        log(LINE.replace("seen", "se\x1fen")),
        log(LINE.replace("seen", "se\x7fen")),
        log(LINE.replace("seen", "se\ren")),
        log(LINE.replace("seen", "x" * 301)),
        log(LINE.replace("seen", "x" * 4000)),
        log(LINE.replace("Quayside", "x" * 1100)),
        log(LINE.replace("seen", " seen")),
        log(LINE.replace("seen", "seen ")),
        log(LINE.replace("seen", "")),
        log(LINE.replace("heron", "")),
        log(LINE.replace("2026-10-01", "2026-13-01")),
        log(LINE.replace("EUR", "EUX")),
        log(LINE.replace("499.00", "499.001")),
        log(LINE.replace("499.00", "1000000000000")),
        log(LINE.replace("street", "strete")),
        log(LINE.replace("street", "offer")),
        log(LINE.replace("Wheels,,", "Wheels,2026-09-30,")),
    ],
)
def test_what_is_not_plainly_right_is_left_to_the_strict_reader(raw: bytes) -> None:
    assert read_columns(plain_text(raw)) is None


@given(logs(right=False))
@settings(deadline=None, max_examples=400)
def test_where_it_speaks_it_says_what_the_strict_reader_says(
    tmp_path_factory: pytest.TempPathFactory, raw: bytes
) -> None:
    rows, problems = strict(raw, tmp_path_factory.mktemp("log"))
    found = long_log(raw)
    if problems:
        assert found is None
    else:
        assert found == rows


@given(logs(right=True))
@settings(deadline=None, max_examples=200)
def test_a_log_without_fault_is_read_by_columns_in_chunks_of_any_size(
    tmp_path_factory: pytest.TempPathFactory, raw: bytes
) -> None:
    rows, problems = strict(raw, tmp_path_factory.mktemp("log"))
    assert problems == []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(columns_reading, "CHUNK_BYTES", 130)
        assert long_log(raw) == rows


def test_the_last_field_of_a_line_with_quotes() -> None:
    assert last_field(b'a,"b, ""c"""') == 'b, "c"'
    assert last_field("a,Löwe".encode()) == "Löwe"
