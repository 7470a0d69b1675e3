"""How sure the pick is."""

import numpy as np

import worlds
from spindlewise.answer.outlook import NO_OUTLOOK, outlook
from spindlewise.answer.outlook import worlds as draw_worlds
from spindlewise.answer.ranking import rank


def of(name, weight, spread=1.0):
    observed = "unknown" if weight is None else (worlds.weighed(weight, spread),)
    return worlds.product(name, {"weight_g": observed})


def ranked(products, prices, **buyer):
    desk = worlds.desk(products, prices)
    return desk, rank(desk, worlds.buyer(**buyer))


def test_the_same_question_has_the_same_worlds_on_one_thread_and_on_two():
    _, found = ranked(
        [of("heron", 330, 9.0), of("siskin", None)], [worlds.price("heron", 500), worlds.price("siskin", 450)]
    )
    one, two = draw_worlds(found, 20_000), draw_worlds(found, 20_000, threads=2)

    assert one.places.tobytes() == two.places.tobytes()
    assert one.central_weights.tobytes() == two.central_weights.tobytes()


def test_who_is_clearly_ahead_is_first_in_every_world():
    desk, found = ranked(
        [of("heron", 290), of("siskin", 400)], [worlds.price("heron", 400), worlds.price("siskin", 900)]
    )
    sure = outlook(desk, found)

    assert sure.stability.first.tolist() == [1.0, 0.0]
    assert sure.change is None
    assert all((r.low, r.high) == (0.0, 1.0) for r in sure.ranges)
    assert [o.first for o in sure.second_opinions] == ["heron", "heron"]


def test_the_less_sure_the_buyer_the_less_sure_the_pick():
    def chance(sure):
        points = {"price": 50.0, "weight": 50.0}
        _, found = ranked(
            [of("heron", 345, "unknown"), of("siskin", 290, "unknown")],
            [worlds.price("heron", 500), worlds.price("siskin", 760)],
            weights={"points": points, "sure": sure},
        )
        return float(draw_worlds(found).first.max())

    assert chance("very") > chance("fairly") > chance("barely")


def test_an_unknown_figure_moves_across_its_whole_span():
    _, found = ranked(
        [of("heron", 330, "unknown"), of("siskin", None)],
        [worlds.price("heron", 500), worlds.price("siskin", 500)],
        points={"weight": 1},
    )
    chance = draw_worlds(found, 40_000)

    # the merit of siskin is uniform between those of 430 and 290 g; heron stands at 330 g
    low, high, heron = (450 - 430) / 170, (450 - 290) / 170, (450 - 330) / 170
    exact = (high - heron) / (high - low)
    assert abs(chance.first[1] - exact) < 4 * np.sqrt(exact * (1 - exact) / 40_000)


def test_nothing_that_meets_the_needs_has_no_outlook():
    desk, found = ranked([of("heron", 330)], [worlds.price("heron", 500)], budget=10)

    assert outlook(desk, found) == NO_OUTLOOK
