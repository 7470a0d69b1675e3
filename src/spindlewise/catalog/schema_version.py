"""The version word of a file, such as `spindlewise product 1`, and what is said of one that is too new.

Every YAML and JSON file of ours carries one. A change that an older program would misread counts it up by
one; the new program goes on reading the old word, of which a sample is kept in tests/data/kept.
"""

import re
from typing import Literal, get_args, get_origin

from pydantic import BaseModel

_WORD = re.compile(r"spindlewise ([a-z]+(?: [a-z]+)*) ([1-9][0-9]{0,5})")


def newer_than(found: object, known: str) -> tuple[str, str] | None:
    """What is wrong and what to do where `found` is the word `known` with a higher number, else nothing.

    >>> newer_than("spindlewise product 2", "spindlewise product 1")[0]
    'was written for a newer Spindlewise: this one reads product 1, it is product 2'
    >>> newer_than("spindlewise product 1", "spindlewise product 1")

    Raises ValueError where `known` is no version word.
    """
    ours = _WORD.fullmatch(known)
    if ours is None:
        raise ValueError(f"{known!r} was given; a version word is spindlewise, a kind and a number")
    theirs = _WORD.fullmatch(found) if isinstance(found, str) else None
    if theirs is None or theirs[1] != ours[1] or int(theirs[2]) <= int(ours[2]):
        return None
    told = f"this one reads {ours[1]} {ours[2]}, it is {theirs[1]} {theirs[2]}"
    return f"was written for a newer Spindlewise: {told}", "update Spindlewise, then read it again"


def version_word(model: type[BaseModel]) -> str | None:
    """The version word that a model's files begin with; nothing for a model that is part of another."""
    field = model.model_fields.get("schema_")
    if field is None or get_origin(field.annotation) is not Literal:
        return None
    return str(get_args(field.annotation)[-1])
