"""Strict YAML: a file read to plain data with the place of every value, or all that is wrong with it.

A byte order mark and CRLF line ends are accepted. Refused are anchors, aliases, merge keys, tags, directives,
several documents, duplicate keys, keys that are not words, and plain scalars on which YAML readers differ.
"""

import os
import stat
from functools import cache, partial
from pathlib import Path

import yaml

from spindlewise.catalog.document import MISREAD, Document, Places
from spindlewise.catalog.yaml_source import LARGEST_BYTES, decode
from spindlewise.catalog.yaml_swift import read_swift
from spindlewise.catalog.yaml_syntax import syntax_problem
from spindlewise.catalog.yaml_walk import Walk
from spindlewise.problems import Problem, sorted_problems

__all__ = ["MISREAD", "Document", "read_yaml", "read_yaml_text"]


def read_yaml(path: Path, shown: str) -> tuple[Document | None, list[Problem]]:
    """The document in the file, and its problems; None where it could not be read to its end.

    `shown` is the file's name in problems. Reads regular files only, and never more than the largest size.
    """
    try:
        # Without waiting: opening a pipe would wait for whoever writes into it.
        handle = os.open(path, os.O_RDONLY | os.O_NONBLOCK)
        try:
            if not stat.S_ISREG(os.fstat(handle).st_mode):
                return None, [_unreadable(shown, "is not a regular file")]
            with open(handle, "rb", buffering=0, closefd=False) as file:  # it is open already
                raw = file.read(LARGEST_BYTES + 1)
        finally:
            os.close(handle)
    except (OSError, ValueError) as error:
        return None, [_unreadable(shown, (getattr(error, "strerror", None) or str(error)).lower())]
    return read_yaml_text(raw, shown)


def read_yaml_text(text: str | bytes, shown: str) -> tuple[Document | None, list[Problem]]:
    """The document in the text, and its problems, sorted; None where it could not be read to its end.

    Where a single value was refused, the document holds MISREAD in its place and can still be validated.
    """
    content, problems = decode(text, shown)
    if problems:
        return None, sorted_problems(problems)
    data = read_swift(content)
    if data is not None:
        again = partial(read_swift, content)
        return Document(shown, data, *_places_later(content, shown), content, again), []
    walk = Walk(shown)
    try:
        walk.run(content)
    except (yaml.YAMLError, ValueError, OverflowError) as error:  # PyYAML in Python lets chr() raise
        return None, sorted_problems([*walk.problems, syntax_problem(error, shown, content)])
    if not walk.whole:
        return None, sorted_problems(walk.problems)
    places, key_places = Places(shown, walk.spots), Places(shown, walk.key_spots)
    return Document(shown, walk.data, places, key_places, content), sorted_problems(walk.problems)


def _places_later(content: str, shown: str) -> tuple[Places, Places]:
    """The places of values and of keys in a text that is known to be right, found when one is asked for."""

    @cache
    def walked() -> Walk:
        walk = Walk(shown)
        walk.run(content)
        return walk

    return Places(shown, lambda: walked().spots), Places(shown, lambda: walked().key_spots)


def _unreadable(shown: str, why: str) -> Problem:
    return Problem(None, "error", "unreadable-file", f"{shown}: {why}", "name a YAML file that can be read")
