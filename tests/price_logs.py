"""Invented price logs for tests, as bytes: whole ones, ones saved elsewhere, and broken ones."""

from pathlib import Path

from hypothesis import strategies as st

from spindlewise.catalog.price_log import read_strictly
from spindlewise.catalog.price_row import HEADER, PriceRow
from spindlewise.problems import Problem

HEAD = ",".join(HEADER)
LINE = "2026-10-01,heron,EU,EUR,499.00,in,street,Quayside Wheels,,seen"


def log(*lines: str, head: str = HEAD, end: str = "\n") -> bytes:
    """A log of these lines."""
    return ("\n".join([head, *lines]) + end).encode()


def strict(raw: bytes, folder: Path) -> tuple[list[PriceRow], list[Problem]]:
    """What the strict reader says of a log."""
    path = folder / "prices.csv"
    path.write_bytes(raw)
    return read_strictly(path, "prices.csv")


def _lines(right: bool) -> st.SearchStrategy[str]:
    def some(good: list[str], bad: list[str]) -> st.SearchStrategy[str]:
        return st.sampled_from(good if right else good + bad)

    def maybe_quoted(text: str) -> st.SearchStrategy[str]:
        quoted = '"' + text.replace('"', '""') + '"'
        return st.just(quoted) if "," in text or '"' in text else st.sampled_from([text, text, quoted])

    money = [("EU", "EUR", "499.00"), ("EU", "EUR", "499"), ("US", "USD", "1200.5"), ("JP", "JPY", "64000")]
    money += [("EU", "EUR", "89.90"), ("EU", "EUR", "0.99"), ("EU", "KWD", "10.125")]
    wrong = [
        ("EU", "EUR", "0"),
        ("EU", "JPY", "5.5"),
        ("EU", "eur", "5"),
        ("EU", "EUR", "-1"),
        ("", "EUR", "5"),
    ]
    wrong += [("EU", "EUR", text) for text in ("", "1e3", "05", ".5", "5.", "1.2.3", "5,0", "9" * 16)]
    kinds = [("street", ""), ("list", ""), ("offer", "2026-10-09"), ("street", "2026-10-09")]
    odd = [("offer", ""), ("street", "2026-09-01"), ("strete", ""), ("street", "2026-02-30")]
    return st.tuples(
        some(["2026-10-01", "2026-10-02", "2026-10-03", "2025-12-31"], ["2026-02-30", "2026-1-1", ""]),
        some(["heron", "siskin", "grebe-2"], ["", " heron", "x" * 61]).flatmap(maybe_quoted),
        st.sampled_from(money if right else money + wrong).map(",".join),
        some(["in", "out"], ["tax"]),
        st.sampled_from(kinds if right else kinds + odd),
        some(["Quayside Wheels", "Löwe, Söhne", 'The "Spoke"', "=1+1"], ["Late ", "x" * 121]).flatmap(
            maybe_quoted
        ),
        some(["seen", "a page, half", "Café"], ["", " seen", "se\u200ben", "x" * 301, 'a"b']).flatmap(
            lambda text: st.just(text) if text == 'a"b' else maybe_quoted(text)
        ),
    ).map(lambda f: ",".join((*f[:4], f[4][0], f[5], f[4][1], f[6])))


def logs(right: bool) -> st.SearchStrategy[bytes]:
    """Logs, corrections and late lines among them; some saved with CRLF or a byte order mark.

    Not `right`: single fields may be wrong, lines stand there twice, the last one may be torn.
    """
    lines = st.lists(_lines(right), max_size=12, unique_by=_said if right else None)
    whole = st.builds(
        lambda found, feed, mark: mark + log(*found).replace(b"\n", feed),
        lines,
        st.sampled_from([b"\n", b"\n", b"\r\n"]),
        st.sampled_from([b"", b"", b"\xef\xbb\xbf"]),
    )
    return whole if right else st.builds(lambda raw, cut: raw[: len(raw) - cut], whole, st.integers(0, 2))


def _said(line: str) -> str:
    """What a line says, whichever of its fields are in quotes."""
    return line.replace('"', "")
