"""Reading one YAML file as one record: all that a buyer's file needs, and a part of opening a catalog."""

from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import Document, read_yaml
from spindlewise.problems import Problem

M = TypeVar("M", bound=BaseModel)


def read_record(model: type[M], path: Path) -> tuple[M | None, Document | None, list[Problem]]:
    """One YAML file as one record, with its document and all its problems."""
    document, problems = read_yaml(path, path.as_posix())
    if document is None:
        return None, None, problems
    record, more = validate(model, document)
    return record, document, [*problems, *more]
