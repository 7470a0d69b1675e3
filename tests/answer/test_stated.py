import pytest

from spindlewise.answer.stated import criterion_from, did_you_mean, order_from, points_from, receiver_from
from spindlewise.buyer.receiver import Channels
from spindlewise.buyer.weights import CRITERIA


def test_what_is_not_stated_of_a_receiver_is_unknown() -> None:
    found = receiver_from("head unit: ant+")
    assert (found.name, found.protocols) == ("head unit", ("ANT+",))
    assert (found.channels, found.pairs_two_sensors) == ("unknown", "unknown")
    assert (found.shows_balance, found.shows_stroke_metrics) == ("can", "can")


def test_all_parts_of_a_receiver_in_any_order() -> None:
    found = receiver_from("watch:Bluetooth,ANT+,Bluetooth:no-balance:pairs:channels=2:no-strokes")
    assert found.protocols == ("Bluetooth", "ANT+")
    assert found.channels == Channels(total=2)
    assert found.pairs_two_sensors == "can"
    assert (found.shows_balance, found.shows_stroke_metrics) == ("cannot", "cannot")


@pytest.mark.parametrize("word", ["unlimited", "unknown"])
def test_channels_in_words(word: str) -> None:
    assert receiver_from(f"x:ANT+:channels={word}").channels == word


@pytest.mark.parametrize(
    "text",
    [
        "",
        ":ANT+",
        "x",
        "x:",
        "x:ANT-",
        "x:ANT+:",
        "x:ANT+:channels=65",
        "x:ANT+:channels=-1",
        "x:ANT+:y",
        "\x07:ANT+",
    ],
)
def test_what_is_no_receiver_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"is not a receiver|no protocol|not understood"):
        receiver_from(text)


def test_points_and_order() -> None:
    assert points_from("Price=1,reading-uncertainty=0.5") == {"price": 1.0, "reading_uncertainty": 0.5}
    assert order_from("weight, price") == ("weight", "price")


@pytest.mark.parametrize(
    "text",
    [
        "price=",
        "price=x",
        "price=inf",
        "price=nan",
        "price=-1",
        "price=1001",
        "price",
        "price=1,price=2",
        "=1",
        "",
    ],
)
def test_points_that_are_none_are_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"no weight|no number|twice|no criterion"):
        points_from(text)


def test_every_criterion_is_known_by_its_name() -> None:
    assert [criterion_from(name) for name in CRITERIA] == list(CRITERIA)


def test_a_word_that_is_near_nothing_is_met_with_all_there_are_or_their_ends() -> None:
    assert did_you_mean("zzz", ["b", "a"]) == "there are a, b"
    assert did_you_mean("zzz", []) == "there are none"
    assert did_you_mean("zzz", [f"p{n:02}" for n in range(50)]) == "there are 50, from p00 to p49"
