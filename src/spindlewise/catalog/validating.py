"""Validating: a document against a model, every fault a problem at the line where it stands."""

import re
from collections.abc import Container, Mapping, Sequence
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from spindlewise.catalog.document import MISREAD, Document, Path, dotted
from spindlewise.catalog.model_keys import fields_at, words_in
from spindlewise.catalog.plain_words import KINDS, Fault, Words, mismatch, single
from spindlewise.catalog.schema_version import newer_than, version_word
from spindlewise.problems import Place, Problem, nearest, shown, sorted_problems

M = TypeVar("M", bound=BaseModel)

_ABSENCES = ("unknown", "none", "not applicable")
_KEYS_LISTED_AT_MOST = 12
MOST_PROBLEMS = 100
"""Problems of one file that are spelt out."""


def validate(model: type[M], document: Document, rule_prefix: str = "") -> tuple[M | None, list[Problem]]:
    """The record in the document, or None and what the model refuses, sorted by place, the first hundred.

    A wrong value is reported where it stands, an unknown key at the key, a missing key at the first key of
    the mapping that lacks it. Of a union only the branch that fits best speaks. What the reader of the file
    reported already (MISREAD) is passed over: None without problems means that the reader said it all.
    Of a file with a newer version word only that is said: what else is strange about it may be new as well.
    `rule_prefix` goes before every rule's name.
    """
    try:
        return model.model_validate(document.data), []
    except ValidationError as error:
        raw = error.errors(include_url=False)
    newer = _newer(model, document, rule_prefix)
    if newer is not None:
        return None, [newer]
    faults = [_fault(entry, document) for entry in raw]
    chosen = _fold([f for f in faults if not _echo(f)], 0)
    heard = [group for group in chosen if group[0].kind == "extra_forbidden" or group[0].value is not MISREAD]
    misspelt = _misspelt_keys(model, [group[0] for group in heard], document)
    found_under_another_name = set(misspelt.values())
    placed = [
        (_place(document, group[0]), group)
        for group in heard
        if group[0].kind != "missing" or group[0].path not in found_under_another_name
    ]
    placed.sort(key=lambda pair: pair[0])
    problems = [_problem(model, document, *pair, misspelt, rule_prefix) for pair in placed[:MOST_PROBLEMS]]
    if len(placed) > MOST_PROBLEMS:
        told = f"there are {len(placed) - MOST_PROBLEMS} more problems in this file"
        last = placed[MOST_PROBLEMS][0]
        problems.append(Problem(last, "error", "too-many-problems", told, "put these right first"))
    return None, sorted_problems(problems)


def _newer(model: type[BaseModel], document: Document, prefix: str) -> Problem | None:
    known = version_word(model)
    words = newer_than(document.value(("schema",)), known) if known is not None else None
    if words is None:
        return None
    message, tip = words
    return Problem(
        document.place(("schema",)), "error", f"{prefix}newer-schema", f"schema: {message}", tip, "schema"
    )


def _fault(entry: Any, document: Document) -> Fault:
    """Resolve a location of pydantic's, which names union branches between the keys."""
    found: Any = document.data
    path: Path = ()
    branches: list[tuple[Path, str]] = []
    location: tuple[str | int, ...] = entry["loc"]
    kind = entry["type"]
    for index, step in enumerate(location):
        if step in _steps_of(found):
            path, found = (*path, step), found[step]
        elif kind == "missing" and index == len(location) - 1:
            path = (*path, step)
        else:
            branches.append((path, str(step)))
    return Fault(path, tuple(branches), kind, entry["msg"], entry["input"], entry.get("ctx", {}))


def _steps_of(value: object) -> Container[str | int]:
    if isinstance(value, tuple):
        return range(len(value))
    return value if isinstance(value, dict) else ()


def _echo(fault: Fault) -> bool:
    """A list of which every entry failed is also called too short; its entries say it better."""
    return fault.kind == "too_short" and len(fault.value) >= fault.facts["min_length"]


def _fold(faults: Sequence[Fault], depth: int) -> list[list[Fault]]:
    """Groups of faults, one a problem: of every union only the branch that fits the value best."""
    groups: list[list[Fault]] = []
    unions: dict[Path, dict[str, list[Fault]]] = {}
    for fault in faults:
        if len(fault.branches) <= depth:
            groups.append([fault])
        else:
            at, label = fault.branches[depth]
            unions.setdefault(at, {}).setdefault(label, []).append(fault)
    for at, branches in unions.items():
        groups.extend(_best_branch(at, list(branches.values()), depth))
    return groups


def _best_branch(at: Path, branches: Sequence[list[Fault]], depth: int) -> list[list[Fault]]:
    fitting = [b for b in branches if not all(f.path == at and _is_mismatch(f) for f in b)]
    if not fitting:
        return [[f for b in branches for f in b]]
    best = min(fitting, key=lambda b: (sum(f.kind == "literal_error" for f in b), len(b)))
    folded = _fold(best, depth + 1)
    words = [f for b in branches for f in b if f.kind == "literal_error" and f.path == at]
    return [[*g, *words] if g[0].path == at and not _is_mismatch(g[0]) else g for g in folded]


def _is_mismatch(fault: Fault) -> bool:
    return fault.kind in KINDS or fault.kind == "literal_error"


def _misspelt_keys(model: type[BaseModel], faults: Sequence[Fault], document: Document) -> dict[Path, Path]:
    """Paths of unknown keys, each with the path of the key that was probably meant, if it is not there."""
    meant: dict[Path, Path] = {}
    for fault in faults:
        if fault.kind == "extra_forbidden":
            parent = fault.path[:-1]
            there = document.value(parent)
            free = [
                k for k in _keys_at(model, parent, fault) if not isinstance(there, dict) or k not in there
            ]
            near = nearest(str(fault.path[-1]), free)
            if near is not None:
                meant[fault.path] = (*parent, near)
    return meant


def _problem(
    model: type[BaseModel],
    document: Document,
    place: Place,
    group: Sequence[Fault],
    misspelt: Mapping[Path, Path],
    prefix: str,
) -> Problem:
    fault = group[0]
    if fault.kind == "missing":
        words = _missing(model, fault)
    elif fault.kind == "extra_forbidden":
        words = _unknown_key(model, fault, misspelt.get(fault.path))
    elif _is_mismatch(fault):
        words = mismatch(group, _spelling(document, place))
    else:
        words = single(fault, _spelling(document, place), group[1:])
    rule, message, tip = words
    field = dotted(fault.path)
    return Problem(place, "error", prefix + rule, f"{field}: {message}" if field else message, tip, field)


def _place(document: Document, fault: Fault) -> Place:
    if fault.kind == "missing":
        return document.head_place(fault.path[:-1])
    about_the_key = fault.kind == "extra_forbidden" or (fault.path, "[key]") in fault.branches
    return document.key_place(fault.path) if about_the_key else document.place(fault.path)


def _missing(model: type[BaseModel], fault: Fault) -> Words:
    name = fault.path[-1]
    if isinstance(name, int):
        return "list-length", "this entry is missing", f"write at least {name + 1} entries"
    field = fields_at(model, fault.path[:-1], _labels(fault)).get(name)
    allowed = words_in(field.annotation) if field is not None else ()
    absences = [word for word in _ABSENCES if word in allowed]
    otherwise = f"; where there is no value, write {' or '.join(absences)}" if absences else ""
    return "missing-key", "the key is missing", f"add it{otherwise}"


def _unknown_key(model: type[BaseModel], fault: Fault, meant: Path | None) -> Words:
    keys = _keys_at(model, fault.path[:-1], fault)
    listed = f"allowed here: {', '.join(keys)}" if 0 < len(keys) <= _KEYS_LISTED_AT_MOST else ""
    if meant is not None:
        guess = f"did you mean {shown(str(meant[-1]))}?"
        return "unknown-key", "no such key is known here", f"{guess} {listed}".rstrip()
    return "unknown-key", "no such key is known here", listed or "take it away, or compare with the template"


def _keys_at(model: type[BaseModel], path: Path, fault: Fault) -> list[str]:
    return list(fields_at(model, path, _labels(fault)))


def _labels(fault: Fault) -> frozenset[str]:
    """The names of the models among the branches taken."""
    return frozenset(label for _, label in fault.branches)


def _spelling(document: Document, place: Place) -> str:
    """A number or a day as the file writes it: what 5.10 reads is lost in the value 5.1."""
    lines = document.text.split("\n")
    line = lines[place.line - 1] if place.line <= len(lines) else ""
    found = re.match(r"[-0-9.]+", line[place.column - 1 :])
    return found[0] if found else ""
