"""The walk over YAML events: plain data and places in one pass, nothing copied, resolved or constructed."""

from typing import Any

import yaml

from spindlewise.catalog import yaml_refusals as refusals
from spindlewise.catalog.document import MISREAD, Path, Spots, dotted
from spindlewise.catalog.plain_scalar import Surprise, read_plain
from spindlewise.problems import Place, Problem

DEEPEST = 24
"""Levels of lists and mappings within one another."""
MOST_NODES = 50_000
"""Keys, values, lists and mappings of one file."""
LONGEST_SCALAR = 10_000
"""Characters of one key or value."""
MOST_PROBLEMS = 100
"""Problems of one file; reading stops there."""

Spot = tuple[int, int]

EVENTS: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""The event source: libyaml's where PyYAML was built with it. Only its parser is used."""


class _Dropped:
    """Stands for a key that was refused: its value is still read for problems, then let go."""

    __slots__ = ("step",)

    def __init__(self, step: Path) -> None:
        self.step = step


_NO_KEY = object()


class _Frame:
    """One open list or mapping."""

    __slots__ = ("entries", "is_key", "key", "key_spots", "mapping", "path", "spots")

    def __init__(self, path: Path, mapping: bool, is_key: bool, spots: Spots, key_spots: Spots) -> None:
        self.path = path
        self.mapping = mapping
        self.is_key = is_key
        self.entries: Any = {} if mapping else []
        self.key: Any = _NO_KEY
        self.spots = spots
        self.key_spots = key_spots


class Walk:
    """One file's walk; afterwards `data`, `spots`, `key_spots` and `problems` hold what was found.

    `whole` is False where the walk had to stop: the data are then not the file's.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        self.data: object = MISREAD
        self.spots: Spots = {}
        self.key_spots: Spots = {}
        self.problems: list[Problem] = []
        self.whole = True
        self._stack: list[_Frame] = []
        self._nodes = 0
        self._documents = 0
        self._going = True

    def run(self, text: str) -> None:
        """Walk the text's events. Raises yaml.MarkedYAMLError where the text is not YAML."""
        loader = EVENTS(text)
        try:
            event = loader.get_event()
            while event is not None:
                self._take(event)
                event = loader.get_event() if self._going else None
        finally:
            loader.dispose()
        if not self._documents:
            self._empty()

    def _take(self, event: Any) -> None:
        kind = type(event)
        if kind is yaml.ScalarEvent:
            self._scalar(event)
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            self._open(event, kind is yaml.MappingStartEvent)
        elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            self._close()
        elif kind is yaml.AliasEvent:
            self._alias(event)
        elif kind is yaml.DocumentStartEvent:
            self._begin_document(event)

    def _count(self, spot: Spot) -> None:
        self._nodes += 1
        if self._nodes > MOST_NODES:
            self._stop(spot, "too-many-nodes", f"the file holds more than {MOST_NODES} keys and values")

    def _begin_document(self, event: Any) -> None:
        self._documents += 1
        if self._documents > 1:
            self._add(_spot(event), refusals.SECOND_DOCUMENT)
            self._going = False
        elif event.version or event.tags:
            self._add(_spot(event), refusals.DIRECTIVE)

    def _scalar(self, event: Any) -> None:
        frame = self._stack[-1] if self._stack else None
        spot = _spot(event)
        self._count(spot)
        if frame is not None and frame.mapping and frame.key is _NO_KEY:
            self._key(frame, event, spot)
            return
        path = self._here(frame)
        value = event.value
        if event.anchor is not None or event.tag is not None:
            self._refuse_properties(event, spot, path)
            value = MISREAD
        elif len(value) > LONGEST_SCALAR:
            self._add(spot, refusals.too_long(value, LONGEST_SCALAR), path)
            value = MISREAD
        elif not event.style:
            if frame is None and not value:
                self._empty()
                return
            value = read_plain(value)
            if type(value) is Surprise:
                self._add(spot, (value.rule, value.message, value.tip), path)
                value = MISREAD
        self._put(frame, path, value, spot)

    def _empty(self) -> None:
        self._add((1, 1), refusals.EMPTY_FILE)
        self.whole = False

    def _key(self, frame: _Frame, event: Any, spot: Spot) -> None:
        key = event.value
        if event.anchor is not None or event.tag is not None:
            self._refuse_properties(event, spot, frame.path)
        if len(key) > LONGEST_SCALAR:
            self._add(spot, refusals.too_long(key, LONGEST_SCALAR), frame.path)
        elif not event.style and (refused := refusals.plain_key(key)):
            self._add(spot, refused, frame.path)
        elif key in frame.entries:
            path = (*frame.path, key)
            self._add(spot, refusals.duplicate_key(*frame.key_spots[path]), path)
        else:
            frame.key = key
            frame.entries[key] = MISREAD
            frame.key_spots[(*frame.path, key)] = spot
            return
        frame.key = _Dropped((key,))

    def _open(self, event: Any, mapping: bool) -> None:
        frame = self._stack[-1] if self._stack else None
        spot = _spot(event)
        self._count(spot)
        is_key = frame is not None and frame.mapping and frame.key is _NO_KEY
        path = frame.path if frame is not None and is_key else self._here(frame)
        if is_key:
            self._refuse_key_kind(frame, spot)
        if event.anchor is not None or event.tag is not None:
            self._refuse_properties(event, spot, path)
        spots, key_spots = self._spots_of(frame)
        spots[path] = spot
        self._stack.append(_Frame(path, mapping, is_key, spots, key_spots))
        if len(self._stack) > DEEPEST:
            self._stop(spot, "too-deep", f"lists and keys lie more than {DEEPEST} levels deep")

    def _close(self) -> None:
        closed = self._stack.pop()
        if closed.is_key:
            return
        value = closed.entries if closed.mapping else tuple(closed.entries)
        self._put(self._stack[-1] if self._stack else None, closed.path, value, None)

    def _alias(self, event: Any) -> None:
        frame = self._stack[-1] if self._stack else None
        spot = _spot(event)
        self._count(spot)
        is_key = frame is not None and frame.mapping and frame.key is _NO_KEY
        path = frame.path if frame is not None and is_key else self._here(frame)
        self._add(spot, refusals.alias(event.anchor), path)
        if frame is not None and is_key:
            frame.key = _Dropped(())
        else:
            self._put(frame, path, MISREAD, spot)

    def _put(self, frame: _Frame | None, path: Path, value: object, spot: Spot | None) -> None:
        if spot is not None:
            self._spots_of(frame)[0][path] = spot
        if frame is None:
            self.data = value
        elif not frame.mapping:
            frame.entries.append(value)
        else:
            if type(frame.key) is not _Dropped:
                frame.entries[frame.key] = value
            frame.key = _NO_KEY

    def _here(self, frame: _Frame | None) -> Path:
        """The path of the value that comes next."""
        if frame is None:
            return ()
        if not frame.mapping:
            return (*frame.path, len(frame.entries))
        key = frame.key
        return (*frame.path, *key.step) if type(key) is _Dropped else (*frame.path, key)

    def _spots_of(self, frame: _Frame | None) -> tuple[Spots, Spots]:
        """Where the next value's places go: what hangs on a refused key is forgotten."""
        if frame is None:
            return self.spots, self.key_spots
        return ({}, {}) if type(frame.key) is _Dropped else (frame.spots, frame.key_spots)

    def _refuse_key_kind(self, frame: _Frame | None, spot: Spot) -> None:
        assert frame is not None  # noqa: S101  # a key always stands in a mapping
        self._add(spot, refusals.LIST_AS_KEY, frame.path)
        frame.key = _Dropped(())

    def _refuse_properties(self, event: Any, spot: Spot, path: Path) -> None:
        if event.anchor is not None:
            self._add(spot, refusals.anchor(event.anchor), path)
        if event.tag is not None:
            self._add(spot, refusals.tag(event.tag), path)

    def _stop(self, spot: Spot, rule: str, message: str) -> None:
        if not self._going:
            return
        self.whole = self._going = False
        tip = "put these right first" if rule == "too-many-problems" else "write a smaller, flatter file"
        self._add(spot, (rule, message, tip))

    def _add(self, spot: Spot, words: refusals.Words, path: Path = ()) -> None:
        rule, message, tip = words
        field = dotted(path)
        told = f"{field}: {message}" if field else message
        self.problems.append(Problem(Place(self.name, *spot), "error", rule, told, tip, field))
        if len(self.problems) == MOST_PROBLEMS:
            self._stop(spot, "too-many-problems", "there may be more problems; reading stopped here")


def _spot(event: Any) -> Spot:
    mark = event.start_mark
    return mark.line + 1, mark.column + 1
