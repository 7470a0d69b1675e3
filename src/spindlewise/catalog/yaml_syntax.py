"""Syntax errors of YAML in plain words."""

import re

from spindlewise.problems import Place, Problem

_OPEN_QUOTE = "a quote is opened here and never closed"
_OPEN_LIST = "a list in [ ] is opened here and not closed"
_OPEN_MAPPING = "a mapping in { } is opened here and not closed"
_AT_OPENING = frozenset({_OPEN_QUOTE, _OPEN_LIST, _OPEN_MAPPING})

_MISFITS = "mapping values are not allowed|expected key|expected <block end>(?!.*but found '\\?')"
_GLUED_COLON = re.compile(r"\s*(?:- )?[A-Za-z_][A-Za-z0-9_-]*:(?=[^\s/])(?!.*: )")

_WORDS: tuple[tuple[str, str, str], ...] = (
    (
        "sequence entries are not allowed",
        "a list entry begins in the wrong place",
        "begin the list on a line of its own",
    ),
    (
        "could not find expected ':'",
        "a line without a key",
        "write key: value, and put a text over several lines in quotes",
    ),
    ("cannot start any token", "a value cannot begin with this character", "put the text in quotes"),
    ("unexpected end of stream|unexpected document separator", _OPEN_QUOTE, "close the quote"),
    (
        "unknown escape|hexadecimal number|hexdecimal number|invalid Unicode character",
        "a backslash in double quotes begins an escape that YAML does not know",
        "use single quotes, where a backslash is a backslash",
    ),
    (r"expected ',' or '\]'", _OPEN_LIST, "close it with ], or set a comma between its entries"),
    (r"expected ',' or '}'", _OPEN_MAPPING, "close it with }, or set a comma between its entries"),
    ("node content", "a value was expected here", "write a value, or put the text in quotes"),
    (
        r"expected '-' indicator|but found '\?'",
        "a key stands among the entries of a list",
        "mend the indentation, or begin the line with '- '",
    ),
    (
        "comment or line break|chomping or indentation",
        "text stands on the line of | or >",
        "begin the text on the next line, indented",
    ),
    ("directive|incompatible YAML", "a line that begins with % is a command to YAML readers", "take it away"),
    ("document start", "something follows the end of the document", "take the line with ... away"),
    ("alphabetic or numeric", "a value cannot begin with & or *", "put the text in quotes"),
    ("tag", "a value cannot begin with !", "put the text in quotes"),
)
"""What PyYAML says (its C and its Python parser differ), what is wrong, what would be right."""


def syntax_problem(error: Exception, name: str, text: str) -> Problem:
    """The place and plain words for what PyYAML says, or its own words where there are no better ones."""
    lines = text.split("\n")
    mark = getattr(error, "problem_mark", None)
    opening = getattr(error, "context_mark", None)
    said = str(getattr(error, "problem", None) or getattr(error, "reason", None) or "unreadable")
    rule, message, tip = _in_plain_words(said, str(getattr(error, "context", None) or ""))
    if opening is not None and (mark is None or message in _AT_OPENING):
        mark = opening
    line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
    if re.search(_MISFITS, said):
        line, column, message, tip = _misfit(lines, line, column, ":" if "mapping values" in said else "")
    return Problem(Place(name, line, column), "error", rule, message, tip)


def _misfit(lines: list[str], line: int, column: int, character: str) -> tuple[int, int, str, str]:
    """A line that does not fit: the parser says where it noticed, the lines say more about why."""
    before = lines[line - 1][: column - 1] if line <= len(lines) else ""
    above = lines[line - 2] if line > 1 else ""
    if glued := _GLUED_COLON.match(above):
        return line - 1, glued.end() + 1, "no space stands after the colon", "write key: value"
    if character and ": " in before:
        return line, column, "a second colon stands in the line", "put the whole text in quotes"
    if not character and before.strip():
        tip = "put the whole text in quotes, and write a quote inside single quotes twice"
        return line, column, "text follows where the value has ended", tip
    tip = "line it up with the keys beside it"
    return line, len(before) - len(before.lstrip()) + 1, "the line does not fit the lines above it", tip


def _in_plain_words(said: str, context: str) -> tuple[str, str, str]:
    if "nesting depth" in said:
        return "too-deep", "lists and keys lie far too deep within one another", "write a flatter file"
    for pattern, message, tip in _WORDS:
        if re.search(pattern, f"{said} {context}"):
            return "yaml-syntax", message, tip
    return "yaml-syntax", f"this is not YAML ({said})", "compare the line with the template"
