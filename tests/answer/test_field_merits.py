"""One question reads its own candidates; further ones read from the table of all, with the same figures."""

import numpy as np
import pytest

from spindlewise.answer.field_merits import FieldMerits
from spindlewise.answer.worked_out import WorkedOut

NAMES = ("auk", "heron", "siskin", "wren")


@pytest.fixture
def read() -> list[str]:
    return []


@pytest.fixture
def merits(read: list[str]) -> FieldMerits:
    def of(name: str) -> tuple[float, float, float]:
        read.append(name)
        at = NAMES.index(name) / 10
        return at, at + 0.1, at + 0.2

    return FieldMerits(NAMES, ("price", "weight"), lambda _: WorkedOut(NAMES, of))


def same(one, other) -> bool:
    return one.products == other.products and all(
        np.array_equal(getattr(one, part), getattr(other, part)) for part in ("low", "expected", "high")
    )


def test_the_first_question_reads_its_candidates_alone_and_the_second_all_once(merits, read) -> None:
    rows = np.array([2, 0])
    first = merits.candidates(rows)
    assert first.products == ("siskin", "auk")
    assert first.expected.tolist() == [[0.1 + 0.2, 0.1 + 0.2], [0.1, 0.1]]
    assert set(read) == {"siskin", "auk"}
    assert same(merits.of(("heron",)), merits.whole.keep(("heron",)))
    assert same(merits.candidates(rows), first)
    read.clear()
    assert same(merits.candidates(np.array([1])), merits.of(("heron",)))
    assert read == []


def test_without_candidates_the_table_is_empty(merits) -> None:
    assert merits.candidates(np.array([], dtype=np.intp)).products == ()
    assert merits.of(()).products == ()
