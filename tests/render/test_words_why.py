from dataclasses import replace

from small_answers import names, reply
from spindlewise.answer.level_reasons import LevelWith, NotKnown
from spindlewise.answer.ranking import Span
from spindlewise.decide.differences import Difference, Differences
from spindlewise.render.words_why import (
    LEVEL,
    TAKE,
    behind_words,
    difference_words,
    level_sentences,
    not_known_words,
    place_words,
    score_words,
)


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
    assert level_sentences((), names()) == ()
    close = (LevelWith("tarnquell-liskar-duo", 0.4, ()),)
    (text,) = level_sentences(close, names())
    assert text == f"Level with it: Tarnquell Liskar Duo; {LEVEL}. {TAKE}"
    assert level_sentences(close, names(), explained=False) == ("Level with it: Tarnquell Liskar Duo.",)
    assert place_words(replace(placed, level_with=("x",))) == "1 to 2"
    assert place_words(replace(placed, held_back=True)) == "-"


def test_level_by_what_nobody_measured_is_called_so_and_no_merit() -> None:
    tried = NotKnown("tarnquell-liskar-duo", "reading_uncertainty", ("bench spread", "temperature"))
    price = NotKnown("tarnquell-liskar-duo", "price", ())
    reasons = (
        LevelWith("pellamund-orrestad", -0.3, ()),
        LevelWith("tarnquell-liskar-duo", 14.1, (tried, price)),
        LevelWith("yttervane-koldrane", -2.0, (tried,)),
        LevelWith("brellowick-ferrowen-2", 0.01, (tried,)),
    )
    known, unknown = level_sentences(reasons, names(), explained=False)
    assert known == "Level with it: Pellamund Orrestad."
    assert unknown == (
        "Level only by what is not known, not by merit: Tarnquell Liskar Duo (14.1 points behind by what is "
        "known), Yttervane Koldrane (2.0 points ahead by what is known) and Brellowick Ferrowen 2. Not "
        "known: of Tarnquell Liskar Duo, uncertainty of the reading (bench spread and temperature) and price."
    )


def test_of_many_that_are_level_the_first_are_named_and_the_others_counted() -> None:
    many = tuple(LevelWith(f"p{k}", 0.1, ()) for k in range(9))
    assert level_sentences(many, names(), explained=False) == (
        "Level with it: p0, p1, p2, p3, p4 and 4 more.",
    )
    figures = tuple(NotKnown(f"p{k}", "weight", ()) for k in range(5))
    assert not_known_words(figures, names()).endswith("of p2, weight; the like of 2 more.")


def test_a_score_without_doubt_has_no_range() -> None:
    placed = replace(reply().ranking.placed[0], score=Span(50.0, 50.0, 50.0))
    assert score_words(placed) == "50.0 of 100"
    assert "between 40.0 and 60.0" in score_words(replace(placed, score=Span(40.0, 50.0, 60.0)))
