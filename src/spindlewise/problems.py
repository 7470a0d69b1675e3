"""Problems: what is wrong in the user's data, where, and what would be right; and their one renderer."""

import difflib
import json
import unicodedata
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

Level = Literal["error", "warning"]
Style = Literal["plain", "human", "json", "github"]
Sources = Callable[[str], str | None]

RESERVED_FILE_NAMES = frozenset(
    {"con", "prn", "aux", "nul", "index"} | {f"{port}{n}" for port in ("com", "lpt") for n in range(10)}
)
"""File names that some systems keep for devices, and servers for a folder's own page: no id is one."""

_SHORT_ESCAPES = {"\n": "\\n", "\r": "\\r", "\t": "\\t", "\0": "\\0"}
_WINDOW = 100


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where something stands: file as shown, line and column, both counted from 1, columns in characters."""

    file: str
    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong in the data: where, how bad, what is wrong, and what would be right.

    `rule` is a kebab-case noun that can be searched for; `field` a dotted path such as
    `observations.weight_g[1].value`. The message names the field; the tip says what would be right.
    """

    place: Place | None
    level: Level
    rule: str
    message: str
    tip: str = ""
    field: str = ""


def shown(text: str, limit: int | None = None) -> str:
    r"""Text that is safe to print: what cannot be seen is written as an escape, what is too long is cut.

    Control characters, terminal escapes, bidirectional controls, odd spaces and lone surrogates become
    `\n`, `\x1b`, `\u202e` and so on. Backslashes stay, so that doing it twice changes nothing.

    >>> print(shown("a\x1b[31m\u202eb"))
    a\x1b[31m\u202eb
    >>> shown("abcdefgh", limit=5)
    'abcd…'
    """
    if limit is not None and len(text) > limit:
        text = text[: limit - 1] + "…"
    if text.isprintable():
        return text
    return "".join(c if c.isprintable() else _escaped(c) for c in text)


def quoted(text: str, limit: int = 60) -> str:
    """Text of the user's, in single quotes, safe to print and never longer than a line.

    >>> quoted("heavy")
    "'heavy'"
    """
    return f"'{shown(text, limit)}'"


def nearest(word: str, candidates: Iterable[str]) -> str | None:
    """The candidate that was probably meant, or None where none is near.

    >>> nearest("wieght_g", ["weight_g", "stack_mm"])
    'weight_g'
    """
    by_folded = {c.casefold(): c for c in sorted(candidates, reverse=True)}
    found = difflib.get_close_matches(word[:200].casefold(), sorted(by_folded), n=1, cutoff=0.7)
    return by_folded[found[0]] if found else None


def sorted_problems(problems: Iterable[Problem]) -> list[Problem]:
    """The problems by file, line, column, rule and message; those without a place come first."""
    return sorted(problems, key=_order)


def render(problems: Iterable[Problem], style: Style, sources: Sources | None = None) -> str:
    """The problems as text, sorted, each line ended with a line feed; "" for none in plain and github style.

    plain: `file:line:column: error: message; tip (rule)`, a line each. human: the same, then the source
    line with a caret under the place, and last the count and the next step; `sources` gives a file's text by
    its shown name, or None. json: one object. github: workflow commands that mark the line in a review.
    """
    ordered = sorted_problems(problems)
    if style == "json":
        return _as_json(ordered)
    if style == "human":
        return _as_human(ordered, sources or (lambda _file: None))
    line = _plain_line if style == "plain" else _github_line
    return "".join(line(p) + "\n" for p in ordered)


def _escaped(character: str) -> str:
    code = ord(character)
    if character in _SHORT_ESCAPES:
        return _SHORT_ESCAPES[character]
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def _order(problem: Problem) -> tuple[str, int, int, str, str, str, str]:
    place = problem.place or Place("", 0, 0)
    return (
        place.file, place.line, place.column, problem.rule, problem.message, problem.tip, problem.level
    )  # fmt: skip


def _said(problem: Problem) -> str:
    return shown(f"{problem.message}; {problem.tip}" if problem.tip else problem.message)


def _plain_line(problem: Problem) -> str:
    place = problem.place
    where = f"{shown(place.file)}:{place.line}:{place.column}: " if place else ""
    return f"{where}{problem.level}: {_said(problem)} ({problem.rule})"


def _as_human(problems: Sequence[Problem], sources: Sources) -> str:
    texts: dict[str, list[str] | None] = {}
    blocks = []
    for problem in problems:
        blocks.append(_plain_line(problem) + "\n" + _excerpt(problem.place, sources, texts))
    return "".join(blocks) + _count_and_next_step(problems)


def _excerpt(place: Place | None, sources: Sources, texts: dict[str, list[str] | None]) -> str:
    if place is None:
        return ""
    if place.file not in texts:
        source = sources(place.file)
        texts[place.file] = None if source is None else source.split("\n")
    lines = texts[place.file]
    if lines is None or not 1 <= place.line <= len(lines):
        return ""
    line, at = lines[place.line - 1].rstrip("\r"), place.column - 1
    start = max(0, at - _WINDOW // 2) if len(line) > _WINDOW else 0
    before, after = shown(line[start:at]), shown(line[at : start + _WINDOW])
    lead = "    " + ("…" if start else "")
    tail = "…" if start + _WINDOW < len(line) else ""
    return f"{lead}{before}{after}{tail}\n{' ' * (len(lead) + _width(before))}^\n"


def _width(text: str) -> int:
    """Terminal cells: wide East Asian characters take two, combining marks none."""
    return sum(
        0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text
    )


def _count_and_next_step(problems: Sequence[Problem]) -> str:
    if not problems:
        return "No problems.\n"
    errors, warnings = _counts(problems)
    parts = [_number(n, word) for n, word in ((errors, "error"), (warnings, "warning")) if n]
    files = len({p.place.file for p in problems if p.place})
    where = f" in {_number(files, 'file')}" if files else ""
    step = (
        "Put the errors right, the first one first, then check again."
        if errors
        else "Nothing has to be changed; look at each warning once."
    )
    return f"{' and '.join(parts)}{where}. {step}\n"


def _counts(problems: Sequence[Problem]) -> tuple[int, int]:
    errors = sum(p.level == "error" for p in problems)
    return errors, len(problems) - errors


def _number(count: int, word: str) -> str:
    return f"{count} {word}{'' if count == 1 else 's'}"


def _as_json(problems: Sequence[Problem]) -> str:
    errors, warnings = _counts(problems)
    entries = [
        {
            "file": shown(p.place.file) if p.place else None,
            "line": p.place.line if p.place else None,
            "column": p.place.column if p.place else None,
            "level": p.level,
            "rule": p.rule,
            "field": shown(p.field),
            "message": shown(p.message),
            "tip": shown(p.tip),
        }
        for p in problems
    ]
    whole = {"schema": "spindlewise problems 1", "errors": errors, "warnings": warnings, "problems": entries}
    return json.dumps(whole, indent=2) + "\n"


def _github_line(problem: Problem) -> str:
    place = problem.place
    named = [("file", shown(place.file)), ("line", place.line), ("col", place.column)] if place else []
    properties = ",".join(
        f"{key}={_property(str(value))}" for key, value in [*named, ("title", problem.rule)]
    )
    return f"::{problem.level} {properties}::{_said(problem).replace('%', '%25')}"


def _property(text: str) -> str:
    return text.replace("%", "%25").replace(":", "%3A").replace(",", "%2C")
