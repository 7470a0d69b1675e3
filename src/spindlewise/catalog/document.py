"""A document: one catalog file as plain data, with the place of every value and key."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final, final

from spindlewise.problems import Place, shown

Path = tuple[str | int, ...]
"""The way to a value: keys and positions from the top, such as ("observations", "weight_g", 1, "value")."""


@final
class Misread:
    """Stands in the data where a problem has been reported already, so that nothing reports it twice."""

    __slots__ = ()

    def __repr__(self) -> str:
        return "MISREAD"


MISREAD: Final = Misread()


Spots = dict[Path, tuple[int, int]]
"""Line and column by path."""


class Places(Mapping[Path, Place]):
    """Paths to places, kept as pairs of line and column until somebody asks."""

    __slots__ = ("_file", "_spots")

    def __init__(self, file: str, spots: Spots | Callable[[], Spots]) -> None:
        """`spots`, or what finds them where anybody asks for one: of a file without a problem nobody does."""
        self._file = file
        self._spots = spots

    def __getitem__(self, path: Path) -> Place:
        line, column = self._found()[path]
        return Place(self._file, line, column)

    def __iter__(self) -> Iterator[Path]:
        return iter(self._found())

    def __len__(self) -> int:
        return len(self._found())

    def _found(self) -> Spots:
        if callable(self._spots):
            self._spots = self._spots()
        return self._spots


@dataclass(frozen=True, slots=True)
class Document:
    """One file: shown name, data (dict, tuple, str, int, float, date), places of values and keys, text.

    Sequences are tuples. A value that was reported as a problem is MISREAD.
    """

    name: str
    data: object
    places: Mapping[Path, Place]
    key_places: Mapping[Path, Place]
    text: str
    again: Callable[[], object] | None = None
    """What reads the same data from the text, where that is known to be right."""

    def without_data(self) -> "Document":
        """The same document with its data only as text, where that can be read again: many are kept."""
        return self if self.again is None else replace(self, data=MISREAD)

    def content(self) -> object:
        """The data, read again where it is not kept."""
        return self.again() if self.again is not None and self.data is MISREAD else self.data

    def place(self, path: Path) -> Place:
        """The place of the value at `path`, or of the innermost thing on the way to it that is there."""
        for length in range(len(path), -1, -1):
            found = self.places.get(path[:length])
            if found is not None:
                return found
        return Place(self.name, 1, 1)

    def key_place(self, path: Path) -> Place:
        """The place of the key that leads to `path`; for an entry of a list, the place of the entry."""
        return self.key_places.get(path) or self.place(path)

    def head_place(self, path: Path) -> Place:
        """The place of the first key of the mapping at `path`: where a missing key is reported."""
        found = self.value(path)
        if isinstance(found, dict) and found:
            return self.key_place((*path, next(iter(found))))
        return self.place(path)

    def value(self, path: Path) -> object:
        """The value at `path`, or MISREAD where there is none."""
        found = self.content()
        for step in path:
            if isinstance(found, dict):
                found = found.get(step, MISREAD)
            elif isinstance(found, tuple) and isinstance(step, int) and 0 <= step < len(found):
                found = found[step]
            else:
                return MISREAD
        return found


def dotted(path: Path) -> str:
    """The path as people write it.

    >>> dotted(("observations", "weight_g", 1, "value"))
    'observations.weight_g[1].value'
    """
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step}]"
        else:
            text += ("." if text else "") + shown(step, 60)
    return text
