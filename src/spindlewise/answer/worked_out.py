"""Things worked out one by one when they are first asked for: most answers need but a few of many."""

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import Generic, TypeVar

K = TypeVar("K")
V = TypeVar("V")


class WorkedOut(Mapping[K, V], Generic[K, V]):
    """A mapping with these keys, in their order; each value is what `work` gives for its key, once.

    >>> squares = WorkedOut((2, 3), lambda number: number**2)
    >>> squares[3], dict(squares)
    (9, {2: 4, 3: 9})
    """

    __slots__ = ("_found", "_keys", "_work")

    def __init__(self, keys: Collection[K], work: Callable[[K], V]) -> None:
        """`keys` are asked for whether they hold one, so a mapping or a set answers soonest."""
        self._keys, self._work = keys, work
        self._found: dict[K, V] = {}

    def __getitem__(self, key: K) -> V:
        """The value; KeyError for a key that is none."""
        if key in self._found:
            return self._found[key]
        if key not in self._keys:
            raise KeyError(key)
        found = self._found[key] = self._work(key)
        return found

    def __iter__(self) -> Iterator[K]:
        """The keys in order."""
        return iter(self._keys)

    def __len__(self) -> int:
        """How many keys there are, asked for or not."""
        return len(self._keys)

    def __contains__(self, key: object) -> bool:
        """Whether it is a key; nothing is worked out for it."""
        return key in self._keys
