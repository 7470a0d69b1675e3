"""What a consultant would say of the question itself."""

import worlds
from spindlewise.answer.doubts import doubts
from spindlewise.answer.ranking import rank


def of(name, weight=330.0, **changes):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight),)}, **changes)


def doubted(products, amounts, **buyer):
    prices = [worlds.price(p.id, a) for p, a in zip(products, amounts, strict=True)]
    return doubts(rank(worlds.desk(products, prices), worlds.buyer(**buyer)))


def test_kin_criteria_are_named_as_counting_one_thing_twice():
    found = doubted([of("heron"), of("siskin")], [500, 600], points={"reading_uncertainty": 1, "detail": 1})

    assert [(t.kind, t.first, t.second) for t in found.twice] == [("kin", "reading_uncertainty", "detail")]


def test_a_criterion_on_which_all_are_alike_tells_nobody_apart():
    found = doubted([of("heron"), of("siskin")], [600, 500], points={"price": 1, "warranty": 1})

    assert [a.criterion for a in found.alike] == ["warranty"]
    assert [(i.kind, i.criterion) for i in found.idle] == [("order stays", "warranty")]


def test_a_need_that_excludes_everybody_and_what_dropping_it_brings_back():
    found = doubted([of("heron"), of("siskin")], [500, 600], budget=100)

    assert found.nobody.relief == (("budget", ("heron", "siskin")),)
    assert (found.twice, found.alike, found.idle) == ((), (), ())


def test_a_budget_missed_by_little():
    found = doubted([of("heron"), of("siskin")], [500, 510], budget=505)

    assert [(m.product, str(m.over)) for m in found.missed] == [("siskin", "5.00")]
    assert found.nobody is None


def test_no_budget_is_missed_by_nobody():
    assert doubted([of("heron")], [500]).missed == ()
