"""The swift reading of YAML in which nothing is wrong: plain data only, no places, a third of the time.

Nearly every file of a catalog is such a file. Whatever is in the least unlike it is left to the walk, which
says what is wrong and where; so both give the same data, or this one gives none.
"""

from typing import Any

import yaml

from spindlewise.catalog.plain_scalar import Surprise, read_plain
from spindlewise.catalog.yaml_refusals import plain_key
from spindlewise.catalog.yaml_walk import DEEPEST, EVENTS, LONGEST_SCALAR, MOST_NODES

LARGEST_CHARACTERS = MOST_NODES
"""Each key, value, list and mapping takes a character at least: such a text cannot hold too many of them."""

SCALAR, ENDS = yaml.ScalarEvent, frozenset({yaml.MappingEndEvent, yaml.SequenceEndEvent})
MOST_KNOWN = 1000
_known_keys: dict[str, str] = {}
"""Keys that were looked at and are plain words: the same few stand in every file, and in memory once."""


def read_swift(text: str) -> dict[str, Any] | None:
    """The mapping that the text holds, or None where the walk has to look at it."""
    if len(text) > LARGEST_CHARACTERS:
        return None
    loader = EVENTS(text)
    try:
        return _read(loader.get_event)
    except (yaml.YAMLError, ValueError, OverflowError):  # the walk says what it is
        return None
    finally:
        loader.dispose()


def _read(take: Any) -> dict[str, Any] | None:
    take()  # the stream's start
    start = take()
    if type(start) is not yaml.DocumentStartEvent or start.version or start.tags:
        return None
    event = take()
    if type(event) is not yaml.MappingStartEvent or event.anchor is not None or event.tag is not None:
        return None
    whole = _entries(take)
    if whole is None or type(take()) is not yaml.DocumentEndEvent:
        return None
    return whole if type(take()) is yaml.StreamEndEvent else None


def _entries(take: Any) -> dict[str, Any] | None:
    """The mapping whose start was taken, to its end; None for anything that is not plainly right."""
    # names of this function are found faster than the module's, and it goes round a hundred thousand times
    scalar, mapping, sequence, ends = SCALAR, yaml.MappingStartEvent, yaml.SequenceStartEvent, ENDS
    longest, plain, surprise, known = LONGEST_SCALAR, read_plain, Surprise, _known_keys
    inside: Any = {}
    into_mapping, key = True, None
    open_ones: list[tuple[Any, bool, Any]] = []
    while True:
        event = take()
        kind = type(event)
        if kind is scalar:
            value = event.value
            if event.anchor is not None or event.tag is not None or len(value) > longest:
                return None
            if into_mapping and key is None:
                key = known.get(value)
                if value in inside or not (key or event.style or _is_plain_key(value)):
                    return None
                key = key or value
                continue
            if not event.style:
                value = plain(value)
                if type(value) is surprise:
                    return None
        elif kind in ends:
            value = inside if into_mapping else tuple(inside)
            if not open_ones:
                return inside  # type: ignore[no-any-return]
            inside, into_mapping, key = open_ones.pop()
        elif kind is mapping or kind is sequence:
            if event.anchor is not None or event.tag is not None or len(open_ones) > DEEPEST - 2:
                return None
            if into_mapping and key is None:
                return None
            open_ones.append((inside, into_mapping, key))
            into_mapping, key = kind is mapping, None
            inside = {} if into_mapping else []
            continue
        else:
            return None
        if into_mapping:
            inside[key] = value
            key = None
        else:
            inside.append(value)


def _is_plain_key(key: str) -> bool:
    if plain_key(key) is not None:
        return False
    if len(_known_keys) < MOST_KNOWN:
        _known_keys[key] = key
    return True
