"""The file forgiven.yaml: warnings that an author has looked at and lets stand, each with the reason."""

from collections.abc import Iterable
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field

from spindlewise.catalog.document import Document
from spindlewise.catalog.model import Record, Text
from spindlewise.problems import Problem


class Forgiven(Record):
    """One warning, or all of one rule in one file."""

    rule: Text
    """The rule's name, as it stands in brackets behind the warning."""
    file: Text
    """The file in the catalog's folder, such as products/skerry-duo.yaml."""
    field: Text | Literal["any"] = "any"
    """The field that the warning names, such as observations.weight_g[0].basis."""
    reason: Text
    """Why it may stand."""


class ForgivenFile(Record):
    """The whole file."""

    schema_: Literal["spindlewise forgiven 1"] = Field(alias="schema")
    forgiven: Annotated[tuple[Forgiven, ...], Field(min_length=1)]


def forgive(
    problems: Iterable[Problem], listed: ForgivenFile, document: Document, folder: Path
) -> list[Problem]:
    """The problems without the forgiven warnings, and an error for each entry that forgives nothing.

    Errors are never forgiven: an entry that names one is an error itself.
    """
    left: list[Problem] = []
    used: set[int] = set()
    for problem in problems:
        hits = {i for i, entry in enumerate(listed.forgiven) if _meant(entry, problem, folder)}
        if problem.level == "error" or not hits:
            left.append(problem)
        else:
            used |= hits
    for index, entry in enumerate(listed.forgiven):
        if index not in used:
            told = f"no warning {entry.rule} in {entry.file} to forgive"
            tip = "take the entry out; an error cannot be forgiven"
            place = document.place(("forgiven", index, "rule"))
            left.append(
                Problem(
                    place,
                    "error",
                    "nothing-to-forgive",
                    f"forgiven[{index}]: {told}",
                    tip,
                    f"forgiven[{index}]",
                )
            )
    return left


def _meant(entry: Forgiven, problem: Problem, folder: Path) -> bool:
    return (
        problem.place is not None
        and problem.rule == entry.rule
        and problem.place.file == (folder / entry.file).as_posix()
        and entry.field in ("any", problem.field)
    )
