import numpy as np

from price_logs import LINE, log
from spindlewise.catalog.columns_reading import read_columns
from spindlewise.catalog.price_columns import PriceColumns

SISKIN = LINE.replace("heron", "siskin")
DEARER = LINE.replace("499.00", "599")


def columns(*lines: str) -> PriceColumns:
    found = read_columns(log(*lines))
    assert found is not None
    return found


def test_each_offer_stands_there_once() -> None:
    found = columns(LINE, SISKIN, DEARER)
    assert sorted(offer[0] for offer in found.offers) == ["heron", "siskin"]
    assert found.offer[0] == found.offer[2] != found.offer[1]
    assert found.minor.tolist() == [49900, 49900, 59900]


def test_lines_by_a_part_of_their_offer() -> None:
    found = columns(LINE, SISKIN, DEARER)
    assert found.offers_where(0, ["heron", "dunlin"]).tolist() == [True, False, True]
    assert found.offers_where(1, []).tolist() == [False] * 3
    assert columns().offers_where(0, ["heron"]).tolist() == []
    assert found.picked(np.array([False, True, False])).minor.tolist() == [49900]


def test_one_below_the_other_keeps_the_offers_it_knows() -> None:
    one, other = columns(LINE), columns(SISKIN, DEARER)
    whole = one.followed_by(other, 1000)
    assert len(whole) == 3
    assert [whole.offers[number][0] for number in whole.offer] == ["heron", "siskin", "heron"]
    assert len(whole.offers) == 2
    assert whole.starts.tolist() == [*one.starts.tolist(), *(other.starts + 1000).tolist()]


def test_lines_are_alike_that_differ_in_source_or_spelling_alone() -> None:
    alike = columns(
        LINE, LINE.replace("seen", "a page"), LINE.replace("499.00", "499.0"), DEARER, SISKIN
    ).likeness()
    assert len(set(alike[:3].tolist())) == 1
    assert len(set(alike[2:].tolist())) == 3
