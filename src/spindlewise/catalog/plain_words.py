"""Plain words for what a model refuses: one fault of pydantic's in, rule, message and tip out."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from spindlewise.catalog.document import Path
from spindlewise.catalog.misspelt_value import day_tip, number_tip
from spindlewise.problems import nearest, quoted, shown

Words = tuple[str, str, str]
"""Rule, what is wrong, what would be right."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One of pydantic's errors, its location resolved: the path in the file and the union branches taken."""

    path: Path
    branches: tuple[tuple[Path, str], ...]
    kind: str
    said: str
    value: Any
    facts: Mapping[str, Any]


KINDS: Mapping[str, str] = {
    "string_type": "text",
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "decimal_type": "a number",
    "is_instance_of": "a number",
    "date_type": "a day as YYYY-MM-DD",
    "bool_type": "true or false",
    "tuple_type": "a list",
    "list_type": "a list",
    "set_type": "a list",
    "frozen_set_type": "a list",
    "dict_type": "keys with values",
    "model_type": "keys with values",
    "model_attributes_type": "keys with values",
}
"""Faults of kind, and the kind that was expected; with literal_error these are the mismatches of a union."""

_PATTERNS = {
    "^[a-z0-9]+(-[a-z0-9]+)*$": "lower-case letters and digits with single hyphens, such as sun-moon-2",
    "^[A-Z]{3}$": "three capital letters, such as EUR",
    "^[A-Z]{2,8}$": "two to eight capital letters, such as EU",
}
_LISTED_AT_MOST = 15
_LONGEST_SAID = 400


def mismatch(faults: Sequence[Fault], spelling: str) -> Words:
    """Words for a value that is of none of the expected kinds; `spelling` is how the file writes it."""
    value = faults[0].value
    kinds = list(dict.fromkeys(KINDS[f.kind] for f in faults if f.kind in KINDS))
    words = tuple(
        dict.fromkeys(word for f in faults if f.kind == "literal_error" for word in allowed_words(f))
    )
    hint = _hint(value, kinds, words, spelling)
    rule = "unlisted-word" if words and not kinds else "wrong-kind"
    expected = _expected(kinds, words)
    if hint.startswith(("write", "take", "put")):
        return rule, f"found {described(value)}", hint
    return rule, f"found {described(value)}", f"{hint}? {expected}" if hint else expected


def single(fault: Fault, spelling: str, siblings: Sequence[Fault] = ()) -> Words:
    """Words for one fault; `siblings` are the word lists that would have been allowed instead."""
    if fault.kind in KINDS or fault.kind == "literal_error":
        return mismatch([fault], spelling)
    rule, message, tip = _WORDING.get(fault.kind, _anything)(fault)
    words = tuple(word for f in siblings for word in allowed_words(f))
    if words and isinstance(fault.value, str):
        near = nearest(fault.value, words)
        listed = f"or one of the words: {', '.join(words)}" if len(words) > 1 else f"or the word {words[0]}"
        tip = f"did you mean {quoted(near)}?" if near else f"{tip}, {listed}" if tip else listed
    return rule, message, tip


def allowed_words(fault: Fault) -> tuple[str, ...]:
    """The words of a Literal, read from pydantic's list of them."""
    found = re.findall(r"'((?:[^'\\]|\\.)*)'|(-?[0-9]+)", str(fault.facts.get("expected", "")))
    return tuple(word or number for word, number in found)


def described(value: object) -> str:
    """What stands in the file, in a few words.

    >>> described("heavy"), described(5), described(())
    ("text 'heavy'", 'the number 5', 'an empty list')
    """
    if isinstance(value, str):
        return f"text {quoted(value)}" if value else "empty text"
    if isinstance(value, date):
        return f"the day {value.isoformat()}"
    if isinstance(value, tuple):
        return f"a list of {len(value)}" if value else "an empty list"
    if isinstance(value, dict):
        return "keys with values"
    return f"the number {shown(str(value), 40)}"


def _expected(kinds: Sequence[str], words: Sequence[str]) -> str:
    listed = ", ".join(words[:_LISTED_AT_MOST]) + (", …" if len(words) > _LISTED_AT_MOST else "")
    if not kinds:
        return f"expected one of: {listed}" if len(words) > 1 else f"expected {quoted(listed)}"
    kind = " or ".join(kinds)
    if not words:
        return f"expected {kind}"
    return f"expected {kind}, or one of: {listed}" if len(words) > 1 else f"expected {kind}, or {listed}"


def _hint(value: object, kinds: Sequence[str], words: Sequence[str], spelling: str) -> str:
    if isinstance(value, str):
        if near := nearest(value, words):
            return f"did you mean {quoted(near)}"
        if "a number" in kinds or "a whole number" in kinds:
            return number_tip(value)
        return day_tip(value) if KINDS["date_type"] in kinds else ""
    if "text" in kinds and isinstance(value, int | float | date):
        return f'put it in quotes: "{spelling}"'
    if kinds[:1] == ["a list"] and isinstance(value, dict):
        return "put a hyphen before its first key: a list has one even where it holds one thing"
    return ""


def _value_error(fault: Fault) -> Words:
    said = str(fault.facts.get("error", fault.said))
    message, _, tip = shown(said, _LONGEST_SAID).partition(" | ")
    return ("contradiction" if isinstance(fault.value, dict) else "invalid-value"), message, tip


def _pattern(fault: Fault) -> Words:
    text, pattern = str(fault.value), str(fault.facts["pattern"])
    expected = _PATTERNS.get(pattern, f"text of the form {pattern}")
    for mended in (text.strip(), text.strip().upper(), re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")):
        if pattern in _PATTERNS and re.fullmatch(pattern, mended):
            return "text-form", f"found text {quoted(text)}", f"write {mended}"
    return "text-form", f"found text {quoted(text)}", f"expected {expected}"


def _range(words: str, fact: str) -> Callable[[Fault], Words]:
    def worded(fault: Fault) -> Words:
        return (
            "out-of-range",
            f"found {described(fault.value)}",
            f"expected {words} {_bound(fault.facts[fact])}",
        )

    return worded


def _bound(bound: object) -> str:
    return str(int(bound)) if isinstance(bound, float) and bound.is_integer() else str(bound)


def _length(rule: str, unit: str, words: str, fact: str) -> Callable[[Fault], Words]:
    def worded(fault: Fault) -> Words:
        bound, size = fault.facts[fact], len(fault.value)
        found = f"found {described(fault.value)}" if size == 0 else f"has {size} {_plural(unit, size)}"
        return rule, found, f"expected {words} {bound} {_plural(unit, bound)}"

    return worded


def _plural(unit: str, count: int) -> str:
    return unit if count == 1 else "entries" if unit == "entry" else unit + "s"


def _anything(fault: Fault) -> Words:
    return "invalid-value", f"found {described(fault.value)}", shown(fault.said[:1].lower() + fault.said[1:])


_WORDING: Mapping[str, Callable[[Fault], Words]] = {
    "value_error": _value_error,
    "assertion_error": _value_error,
    "string_pattern_mismatch": _pattern,
    "greater_than": _range("more than", "gt"),
    "greater_than_equal": _range("at least", "ge"),
    "less_than": _range("less than", "lt"),
    "less_than_equal": _range("at most", "le"),
    "multiple_of": _range("a multiple of", "multiple_of"),
    "string_too_short": _length("text-length", "character", "at least", "min_length"),
    "string_too_long": _length("text-length", "character", "at most", "max_length"),
    "too_short": _length("list-length", "entry", "at least", "min_length"),
    "too_long": _length("list-length", "entry", "at most", "max_length"),
}
