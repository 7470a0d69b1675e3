"""What is refused of YAML although it is YAML: the rule, what is wrong, what would be right."""

from functools import lru_cache

from spindlewise.catalog.plain_scalar import Surprise, read_plain
from spindlewise.problems import quoted

Words = tuple[str, str, str]
"""Rule, what is wrong, what would be right."""

LIST_AS_KEY: Words = ("key-kind", "a list or mapping stands as a key", "write a word as the key")
SECOND_DOCUMENT: Words = ("several-documents", "a second document begins", "one file, one document")
DIRECTIVE: Words = ("directive", "a YAML directive", "take the line that begins with % away")
EMPTY_FILE: Words = ("empty-file", "the file holds nothing", "begin with a template")


def anchor(name: str) -> Words:
    """An anchor marks a value so that aliases may copy it."""
    tip = 'take it away and write copies out in full, or put it in quotes if the text begins with "&"'
    return "anchor", f"{quoted('&' + name)} marks a value for copying", tip


def alias(name: str) -> Words:
    """An alias copies a marked value: a few lines of them can stand for more data than memory holds."""
    tip = 'write the value out in full, or put it in quotes if the text begins with "*"'
    return "alias", f"{quoted('*' + name)} copies from elsewhere in the file", tip


def tag(name: str) -> Words:
    """A tag says how a value is to be read; here the value itself says it."""
    text = quoted(name.replace("tag:yaml.org,2002:", "!!"))
    tip = 'take it away, or put it in quotes if the text begins with "!"'
    return "tag", f"the tag {text} stands before a value", tip


def too_long(text: str, longest: int) -> Words:
    """A key or value longer than anything a catalog says."""
    return "too-long", f"the text is {len(text)} characters long", f"write at most {longest} characters"


def duplicate_key(line: int, column: int) -> Words:
    """A key that stands already; most YAML readers let the second win silently."""
    told = f"the key stands a second time; it stands first in line {line}, column {column}"
    return "duplicate-key", told, "keep one of the two"


@lru_cache(maxsize=512)
def plain_key(text: str) -> Words | None:
    """Why a key without quotes is not simply a word, or None where it is one.

    >>> plain_key("weight_g") is None, plain_key("NO")[0]
    (True, 'ambiguous-word')
    """
    value = read_plain(text)
    if isinstance(value, str):
        return None
    if not text:
        return "key-kind", "a value stands without its key", "write the key before the colon"
    if text == "<<":
        return "merge-key", "the merge key '<<' copies keys from elsewhere", "write the keys out in full"
    if isinstance(value, Surprise):
        return value.rule, f"the key {value.message}", f'write "{text}" in quotes, or another word as the key'
    kind = "a number" if isinstance(value, int | float) else "a day"
    return "key-kind", f"the key {text} is {kind}", f'write "{text}" in quotes, or a word as the key'
