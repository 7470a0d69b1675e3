"""Second opinions on a buyer's ranking."""

import worlds
from spindlewise.answer.ranking import rank
from spindlewise.answer.second import expected_figure, second_look
from spindlewise.answer.standing import Standing


def test_both_methods_speak_and_take_names_for_merits():
    products = [worlds.product("heron"), worlds.product("siskin", {"weight_g": (worlds.weighed(300.0),)})]
    desk = worlds.desk(products, [worlds.price("heron", 500), worlds.price("siskin", 650)])
    found = second_look(desk, rank(desk, worlds.buyer(points={"price": 2, "weight": 1, "detail": 1})))

    assert [o.method for o in found] == ["TOPSIS", "min-max weighted sum"]
    assert all(o.first in ("heron", "siskin") for o in found)


def test_an_unknown_figure_is_taken_at_the_end_that_scores_least_and_none_at_the_worst_knot():
    desk = worlds.desk([], [])

    def figure(criterion, origin, value=None):
        return expected_figure(desk, Standing(criterion, value, None, None, "", origin, None, ""))

    assert figure("weight", "unknown") == 430
    assert figure("running_time", "unknown") == 20
    assert figure("running_time", "none") == 15
    assert figure("weight", "measured", 330.0) == 330.0
