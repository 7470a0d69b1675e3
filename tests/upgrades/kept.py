"""The kept samples: a file of each version ever written, and the words that today's program knows."""

import importlib
import re
from pathlib import Path

from pydantic import BaseModel

from spindlewise.answer import answer_log
from spindlewise.catalog.schema_version import version_word
from spindlewise.site import manifest
from structure.source_tree import modules

KEPT = Path(__file__).parents[1] / "data" / "kept"
WORD = re.compile(r"spindlewise ([a-z]+(?: [a-z]+)*) ([1-9][0-9]*)")


def file_models() -> dict[str, type[BaseModel]]:
    """Every model that a file of its own is read with, by its version word; found by importing everything."""
    for module in modules():
        importlib.import_module(module.name)
    found: dict[str, type[BaseModel]] = {}
    waiting: list[type[BaseModel]] = list(BaseModel.__subclasses__())
    while waiting:
        model = waiting.pop()
        waiting += model.__subclasses__()
        word = version_word(model)
        if word is not None and model.__module__.startswith("spindlewise."):
            found[word] = model
    return found


def read_words() -> set[str]:
    """The newest version word of everything that is read again: files of authors, logs, manifests."""
    return {*file_models(), answer_log.SCHEMA, manifest.SCHEMA}


def split(word: str) -> tuple[str, int]:
    """The kind, written as a file name, and the number.

    >>> split("spindlewise logged answer 2")
    ('logged-answer', 2)
    """
    found = WORD.fullmatch(word)
    assert found is not None, word
    return found[1].replace(" ", "-"), int(found[2])


def sample(kind: str, number: int) -> Path | None:
    """The kept file of a version, whatever its ending."""
    found = sorted(KEPT.glob(f"{kind}-{number}.*"))
    return found[0] if len(found) == 1 else None
