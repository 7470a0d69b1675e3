"""The bytes and characters of a YAML file: what has to be right before there is anything to parse."""

import codecs
import re

from spindlewise.problems import Place, Problem

LARGEST_BYTES = 1_048_576
"""One file is at most 1 MiB."""
_MOST_REPORTED = 20

_FORBIDDEN = (
    "[^\t\n\x20-\x7e\xa0-\u2027\u202f-\u2065\u206a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
)
"""Controls, breaks that editors do not count, bidirectional controls, byte order marks, surrogates."""

_BREAKS = "\r\x85\u2028\u2029"
_LEADING_TAB = re.compile(r"^ *\t", re.MULTILINE)


def decode(raw: str | bytes, name: str) -> tuple[str, list[Problem]]:
    """The text with line feeds only, and what is wrong with its bytes and characters.

    A byte order mark at the beginning and CRLF line ends are accepted, as both say nothing about the data;
    everything else that an editor does not show is a problem. With problems, the text is for excerpts only.
    """
    size = len(raw) if isinstance(raw, bytes) else len(raw.encode("utf-8", "surrogatepass"))
    if size > LARGEST_BYTES:
        told = f"the file is larger than {LARGEST_BYTES // 1024} KiB"
        return "", [_problem(name, 1, 1, "file-too-large", told, "split it")]
    if isinstance(raw, bytes):
        try:
            text = raw.decode("utf-8")
        except UnicodeDecodeError as error:
            return raw.decode("utf-8", "replace"), [_not_utf8(raw, error.start, name)]
    else:
        text = raw
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    if text.replace("\n", "").isprintable():  # then there is neither a tab nor anything that cannot be seen
        return text, []
    return text, _forbidden_characters(text, name) + _leading_tabs(text, name)


def _not_utf8(raw: bytes, start: int, name: str) -> Problem:
    if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        told = "the file is written in UTF-16"
        return _problem(name, 1, 1, "not-utf8", told, "save it as UTF-8")
    before = raw[:start].decode("utf-8").removeprefix("\ufeff")
    line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
    return _problem(
        name, line, column, "not-utf8", f"the byte 0x{raw[start]:02X} is not UTF-8", "save the file as UTF-8"
    )


def _forbidden_characters(text: str, name: str) -> list[Problem]:
    problems = []
    for found in re.finditer(_FORBIDDEN, text):  # compiled only where it is needed: that takes a while
        line, column = _line_and_column(text, found.start())
        problems.append(_problem(name, line, column, "invisible-character", *_what(found.group())))
        if len(problems) == _MOST_REPORTED:
            break
    return problems


def _what(character: str) -> tuple[str, str]:
    code = f"U+{ord(character):04X}"
    if character in _BREAKS:
        return f"a line break that editors count differently ({code})", "end lines with LF or CRLF"
    if "\u202a" <= character <= "\u2069":
        return f"a character that turns the direction of text round ({code})", "take it away"
    return f"a character that cannot be seen ({code})", "take it away"


def _leading_tabs(text: str, name: str) -> list[Problem]:
    problems = []
    for found in _LEADING_TAB.finditer(text):
        line, column = _line_and_column(text, found.end() - 1)
        problems.append(
            _problem(
                name, line, column, "tab-indent", "a tab stands in the indentation", "indent with spaces"
            )
        )
        if len(problems) == _MOST_REPORTED:
            break
    return problems


def _line_and_column(text: str, at: int) -> tuple[int, int]:
    return text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at)


def _problem(name: str, line: int, column: int, rule: str, message: str, tip: str) -> Problem:
    return Problem(Place(name, line, column), "error", rule, message, tip)
