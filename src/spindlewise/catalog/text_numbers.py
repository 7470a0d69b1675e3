"""Pieces of text numbered by what they say, many at once: the columns of a long log by their few values.

Pieces are compared as words of eight bytes, so that a million of them cost a few passes over memory.
"""

from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Ints: TypeAlias = NDArray[np.int64]
Codes: TypeAlias = NDArray[np.int32]
Words: TypeAlias = NDArray[np.uint64]

PADDING = b"\0" * 8
"""A text whose pieces are numbered ends with these, so that its last piece has a whole word too."""

LONGEST_PIECE = 1024
"""Bytes; beyond this no piece is numbered."""

_MULTIPLIER = np.uint64(0x9E3779B97F4A7C15)
"""2^64 over the golden ratio, odd (Knuth 1973): products of unlike words are unlike in their high bits."""
_KEPT = np.array([(1 << 8 * n) - 1 for n in range(8)] + [(1 << 64) - 1], dtype=np.uint64)
"""By how many bytes of a word belong to the piece: which bits to keep."""


class TextNumbers:
    """Distinct pieces of text in the order in which they were first numbered."""

    def __init__(self) -> None:
        """Begin with none."""
        self._number_of: dict[bytes, int] = {}

    @property
    def texts(self) -> Sequence[bytes]:
        """The distinct pieces; each one's index is its number."""
        return list(self._number_of)

    def number(self, padded: bytes, begins: Ints, ends: Ints) -> Codes | None:
        """The number of each piece `padded[begin:end]`, where `padded` ends with PADDING.

        None where a piece is longer than LONGEST_PIECE, or where two unlike pieces fall into one by chance:
        then nobody can be sure.
        """
        if not len(begins):
            return np.zeros(0, np.int32)
        lengths = ends - begins
        longest = int(lengths.max())
        if longest > LONGEST_PIECE:
            return None
        words = [_words(padded, begins, lengths, at) for at in range(0, max(longest, 1), 8)]
        mixed = lengths.astype(np.uint64)
        for word in words:
            mixed = (mixed ^ word) * _MULTIPLIER
            mixed ^= mixed >> np.uint64(32)
        _, first, which = np.unique(mixed, return_index=True, return_inverse=True)
        alike = first[which]
        if not all(np.array_equal(word, word[alike]) for word in words):
            return None
        if not np.array_equal(lengths, lengths[alike]):
            return None
        numbers = [
            self._number_of.setdefault(padded[begin:end], len(self._number_of))
            for begin, end in zip(begins[first].tolist(), ends[first].tolist(), strict=True)
        ]
        return np.array(numbers, np.int32)[which]


def _words(padded: bytes, begins: Ints, lengths: Ints, at: int) -> Words:
    """Eight bytes of each piece from `at` on; what lies beyond a piece's end counts as zeros."""
    every = np.ndarray((len(padded) - 7,), "<u8", padded, strides=(1,))
    kept = np.clip(lengths - at, 0, 8)
    places = np.minimum(begins + at, len(every) - 1)
    found: Words = every[places] & _KEPT[kept]
    return found
