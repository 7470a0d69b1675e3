from dataclasses import replace

from small_answers import names, reply
from spindlewise.answer.ranking import Span
from spindlewise.decide.differences import Difference, Differences
from spindlewise.render.words_why import behind_words, difference_words, level_words, place_words, score_words


def found(*parts: tuple[str, float]) -> Differences:
    total = sum(points for _, points in parts)
    return Differences("a", "b", tuple(Difference(*part) for part in parts), total)


def test_gains_and_losses_are_named_with_their_points() -> None:
    text = difference_words(found(("price", -9.0), ("weight", 6.0), ("warranty", 1.2)), names())
    assert text == "gains 6.0 points on weight and 1.2 on warranty, loses 9.0 points on price"


def test_what_prints_as_nothing_is_not_named() -> None:
    assert difference_words(found(("price", 0.04), ("weight", 0.0)), names()) == "is alike on every count"


def test_above_below_and_the_same() -> None:
    assert [behind_words(found(("price", p))) for p in (-3.0, 2.5, 0.01)] == [
        "3.0 points below",
        "2.5 points above",
        "the same score",
    ]


def test_level_products_are_called_level_and_never_second() -> None:
    placed = reply().ranking.placed[0]
    assert level_words(replace(placed, level_with=()), names()) == ""
    text = level_words(replace(placed, level_with=("tarnquell-liskar-duo",)), names())
    assert text.startswith("Level with it: Tarnquell Liskar Duo; ")
    assert place_words(replace(placed, level_with=("x",))) == "1 to 2"
    assert place_words(replace(placed, held_back=True)) == "-"


def test_a_score_without_doubt_has_no_range() -> None:
    placed = replace(reply().ranking.placed[0], score=Span(50.0, 50.0, 50.0))
    assert score_words(placed) == "50.0 of 100"
    assert "between 40.0 and 60.0" in score_words(replace(placed, score=Span(40.0, 50.0, 60.0)))
