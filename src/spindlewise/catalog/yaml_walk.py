"""The walk over YAML events: plain data and places in one pass, nothing copied, resolved or constructed."""

from functools import lru_cache
from typing import Any

import yaml

from spindlewise.catalog.document import MISREAD, Path, dotted
from spindlewise.catalog.plain_scalar import Surprise, read_plain
from spindlewise.problems import Place, Problem, quoted

DEEPEST = 24
"""Levels of lists and mappings within one another."""
MOST_NODES = 50_000
"""Keys, values, lists and mappings of one file."""
LONGEST_SCALAR = 10_000
"""Characters of one key or value."""
MOST_PROBLEMS = 100
"""Problems of one file; reading stops there."""

Spot = tuple[int, int]
Spots = dict[Path, Spot]

_EVENTS: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
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
        loader = _EVENTS(text)
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
            self._add(_spot(event), "several-documents", "a second document begins", "one file, one document")
            self._going = False
        elif event.version or event.tags:
            self._add(_spot(event), "directive", "a YAML directive", "take the line that begins with % away")

    def _scalar(self, event: Any) -> None:
        frame = self._stack[-1] if self._stack else None
        spot = _spot(event)
        self._count(spot)
        if frame is not None and frame.mapping and frame.key is _NO_KEY:
            self._key(frame, event, spot)
            return
        path = self._here(frame)
        if event.anchor is not None or event.tag is not None:
            value = self._refuse_properties(event, spot, path)
        else:
            value = event.value
            if len(value) > LONGEST_SCALAR:
                value = self._too_long(value, spot, path)
            elif not event.style:
                if frame is None and not value:
                    self._empty()
                    return
                value = read_plain(value)
                if type(value) is Surprise:
                    self._add(spot, value.rule, value.message, value.tip, path)
                    value = MISREAD
        self._put(frame, path, value, spot)

    def _empty(self) -> None:
        self._add((1, 1), "empty-file", "the file holds nothing", "begin with a template")
        self.whole = False

    def _key(self, frame: _Frame, event: Any, spot: Spot) -> None:
        key = event.value
        if event.anchor is not None or event.tag is not None:
            self._refuse_properties(event, spot, frame.path)
        if len(key) > LONGEST_SCALAR:
            self._too_long(key, spot, frame.path)
        elif not event.style and (refused := _refused_key(key)):
            self._add(spot, *refused, frame.path)
        elif key in frame.entries:
            first_line, first_column = frame.key_spots[(*frame.path, key)]
            told = (
                f"the key stands a second time; it stands first in line {first_line}, column {first_column}"
            )
            self._add(spot, "duplicate-key", told, "keep one of the two", (*frame.path, key))
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
        text = quoted("*" + event.anchor)
        tip = 'write the value out in full, or put it in quotes if the text begins with "*"'
        self._add(spot, "alias", f"{text} copies from elsewhere in the file", tip, path)
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
        self._add(
            spot, "key-kind", "a list or mapping stands as a key", "write a word as the key", frame.path
        )
        frame.key = _Dropped(())

    def _refuse_properties(self, event: Any, spot: Spot, path: Path) -> object:
        if event.anchor is not None:
            text = quoted("&" + event.anchor)
            tip = 'take it away and write copies out in full, or put it in quotes if the text begins with "&"'
            self._add(spot, "anchor", f"{text} marks a value for copying", tip, path)
        if event.tag is not None:
            text = quoted(event.tag.replace("tag:yaml.org,2002:", "!!"))
            tip = 'take it away, or put it in quotes if the text begins with "!"'
            self._add(spot, "tag", f"the tag {text} stands before a value", tip, path)
        return MISREAD

    def _too_long(self, text: str, spot: Spot, path: Path) -> object:
        told = f"the text is {len(text)} characters long"
        self._add(spot, "too-long", told, f"write at most {LONGEST_SCALAR} characters", path)
        return MISREAD

    def _stop(self, spot: Spot, rule: str, message: str) -> None:
        if not self._going:
            return
        self.whole = self._going = False
        tip = "put these right first" if rule == "too-many-problems" else "write a smaller, flatter file"
        self._add(spot, rule, message, tip)

    def _add(self, spot: Spot, rule: str, message: str, tip: str, path: Path = ()) -> None:
        field = dotted(path)
        told = f"{field}: {message}" if field else message
        self.problems.append(Problem(Place(self.name, *spot), "error", rule, told, tip, field))
        if len(self.problems) == MOST_PROBLEMS:
            self._stop(spot, "too-many-problems", "there may be more problems; reading stopped here")


def _spot(event: Any) -> Spot:
    mark = event.start_mark
    return mark.line + 1, mark.column + 1


@lru_cache(maxsize=512)
def _refused_key(text: str) -> tuple[str, str, str] | None:
    """Rule, message and tip for a plain key that is not simply a word."""
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
