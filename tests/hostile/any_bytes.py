"""Files as somebody might break them: samples cut, doubled, spliced and sprinkled with what breaks readers.

`answered` holds a reader to its word: something read or an error, all of it printable, in time.
"""

import signal
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from types import FrameType
from typing import Any

from hypothesis import strategies as st

from hostile.payloads import HIDDEN, PAYLOADS
from hostile.readers import Reader
from spindlewise.problems import render

SECONDS = 2.0
"""Of the processor, for one input."""
MEBIBYTES = 300
"""More memory than before, at most, for all of them."""
BITS: tuple[bytes, ...] = (
    b"",
    b"\n",
    b"\r\n",
    b"\r",
    b"\0",
    b"\xef\xbb\xbf",
    b"\xff\xfe",
    b"\xff",
    b"\xc0\xaf",
    b"\xed\xa0\x80",
    b"\t",
    b",",
    b";",
    b'"',
    b'""',
    b"'",
    b": ",
    b"- ",
    b"? ",
    b"{",
    b"}",
    b"[",
    b"]",
    b"[" * 60,
    b"{a: " * 60,
    b"&a ",
    b"*a",
    b"<<: *a",
    b"!!python/object:os.system ",
    b"!t ",
    b"|\n",
    b">\n",
    b"---\n",
    b"...\n",
    b"%YAML 9.9\n",
    b"# ",
    b"~",
    b"null",
    b"true",
    b"NO",
    b"0777",
    b"0x1F",
    b"1_000",
    b"1:30",
    b"1e999",
    b"-1e-999",
    b".nan",
    b"-.inf",
    b"9" * 400,
    b"0." + b"0" * 300 + b"1",
    b"-0",
    b"+1",
    b"1,5",
    b"1.000,50",
    b"2024-02-30",
    b"9999-12-31",
    b"0000-00-00",
    b"2025-10-18T09:30:00Z",
    b"schema",
    b"id",
    b"unknown",
    b"none",
    b"not applicable",
    b"EUR",
    b"EU",
    b"\\",
    b"\\u0000",
    b"\\ud800",
    b"{}",
    b"[]",
    b"\x1b[31m",
    "\u202e".encode(),
    "\u2028".encode(),
    "\u0660\u0661".encode(),
    "\uff11".encode(),
    "e\u0301".encode(),
    b"a" * 5000,
    *(text.encode("utf-8", "surrogatepass") for text in (*PAYLOADS[::6], *HIDDEN[::3])),
)
PLACE = st.integers(0, 10_000)
EDITS = st.one_of(
    st.tuples(st.just("put"), PLACE, st.sampled_from(BITS)),
    st.tuples(st.just("over"), PLACE, st.sampled_from(BITS)),
    st.tuples(st.just("put"), PLACE, st.binary(max_size=8)),
    st.tuples(st.just("cut"), PLACE, PLACE),
    st.tuples(st.just("double"), PLACE, st.integers(1, 200)),
    st.tuples(st.just("flip"), PLACE, st.integers(0, 7)),
    st.tuples(st.just("end"), PLACE, st.just(0)),
    st.tuples(st.just("swap lines"), PLACE, PLACE),
)


def broken_files(samples: Sequence[bytes]) -> st.SearchStrategy[bytes]:
    """A sample with up to eight changes, or what never was a sample."""
    changed = st.builds(_edited, st.sampled_from(samples), st.lists(EDITS, max_size=8))
    strewn = st.lists(st.sampled_from(BITS), max_size=30).map(b"".join)
    return st.one_of(changed, changed, changed, strewn, st.binary(max_size=80))


def _edited(raw: bytes, edits: Sequence[tuple[str, int, Any]]) -> bytes:
    for kind, place, what in edits:
        at = place * (len(raw) + 1) // 10_001
        if kind == "put":
            raw = raw[:at] + what + raw[at:]
        elif kind == "over":
            raw = raw[:at] + what + raw[at + len(what) :]
        elif kind == "cut":
            raw = raw[:at] + raw[at + what * len(raw) // 40_000 :]
        elif kind == "double":
            raw = raw[:at] + raw[at : at + what] * 2 + raw[at + what :]
        elif kind == "flip" and raw:
            at = min(at, len(raw) - 1)
            raw = raw[:at] + bytes([raw[at] ^ 1 << what]) + raw[at + 1 :]
        elif kind == "end":
            raw = raw[:at]
        elif kind == "swap lines":
            lines = raw.split(b"\n")
            one, other = place % len(lines), what % len(lines)
            lines[one], lines[other] = lines[other], lines[one]
            raw = b"\n".join(lines)
    return raw


class TooLong(AssertionError):
    """An input took more of the processor than any may."""


@contextmanager
def in_time(seconds: float = SECONDS) -> Iterator[None]:
    """End what takes longer, in processor time: whatever else the machine does counts for nothing."""

    def ring(_number: int, _frame: FrameType | None) -> None:
        raise TooLong(f"more than {seconds} s")

    before = signal.signal(signal.SIGVTALRM, ring)
    signal.setitimer(signal.ITIMER_VIRTUAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


def answered(reader: Reader, raw: bytes) -> bool:
    """Whether anything was read; what is wrong is told in every style, and nothing else happens."""
    with in_time():
        found, problems = reader.read(raw)
        assert found or any(problem.level == "error" for problem in problems), raw
        text = raw.decode("utf-8", "replace")
        for style in ("plain", "human", "json", "github"):
            told = render(problems, style, lambda _: text)
            assert told.replace("\n", "").isprintable()
        for problem in problems:
            assert problem.place is not None
            assert problem.place.line >= 1
            assert problem.place.column >= 1
            assert problem.message
    return found
