"""Which keys and words a model allows at a path, for messages about what is unknown or missing."""

from collections.abc import Collection, Iterator
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from spindlewise.catalog.document import Path


def fields_at(model: type[BaseModel], path: Path, branches: Collection[str] = ()) -> dict[str, FieldInfo]:
    """The fields that the model allows at the path, by their YAML key, in the model's order.

    Where the path leads through a union of models, `branches` says which, as pydantic names them in its
    locations: by the model's name or by the word that tells them apart; without a hit, all of them count.
    """
    kinds: list[Any] = [model]
    for step in path:
        inner = [kind for outer in kinds for kind in _step_into(outer, step)]
        kinds = [leaf for kind in inner for leaf in _leaves(kind)]
        kinds = [leaf for leaf in kinds if _is_branch(leaf, branches)] or kinds
    return {key: field for kind in kinds if _is_model(kind) for key, field in _by_key(kind).items()}


def words_in(annotation: Any) -> tuple[str, ...]:
    """The words that an annotation allows through Literal, in its order, those inside lists left aside.

    >>> words_in(float | Literal["unknown", "none"])
    ('unknown', 'none')
    """
    return tuple(
        word
        for leaf in _leaves(annotation)
        if get_origin(leaf) is Literal
        for word in get_args(leaf)
        if isinstance(word, str)
    )


def _leaves(kind: Any) -> Iterator[Any]:
    """The kinds that a union or an annotated kind is made of."""
    origin = get_origin(kind)
    if origin is Annotated:
        yield from _leaves(get_args(kind)[0])
    elif origin is Union or origin is UnionType:
        for part in get_args(kind):
            yield from _leaves(part)
    else:
        yield kind


def _step_into(kind: Any, step: str | int) -> list[Any]:
    """What stands behind a key or a position of a kind."""
    origin, args = get_origin(kind), get_args(kind)
    if origin is dict:
        return [args[1]]
    if origin in (tuple, list):
        return (
            [args[step]] if isinstance(step, int) and step < len(args) and Ellipsis not in args else [args[0]]
        )
    if _is_model(kind) and isinstance(step, str):
        field = _by_key(kind).get(step)
        return [] if field is None else [field.annotation]
    return []


def _is_branch(kind: Any, branches: Collection[str]) -> bool:
    if not _is_model(kind):
        return False
    words = (word for field in kind.model_fields.values() for word in words_in(field.annotation))
    return kind.__name__ in branches or any(word in branches for word in words)


def _is_model(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, BaseModel)


def _by_key(model: type[BaseModel]) -> dict[str, FieldInfo]:
    return {field.alias or name: field for name, field in model.model_fields.items()}
