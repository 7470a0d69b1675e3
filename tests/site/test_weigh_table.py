"""The ranking that stands on the page where no script runs."""

import worlds
from spindlewise.answer.asking import Asked, ask
from spindlewise.answer.ranking import rank
from spindlewise.site.weigh_table import weigh_table


def test_it_is_the_ranking_with_the_usual_weights():
    products = [
        worlds.product(name, {"weight_g": (worlds.weighed(weight),)})
        for name, weight in (("heron", 330.0), ("siskin", 300.0))
    ]
    desk = worlds.desk(products, [worlds.price("heron", 500), worlds.price("siskin", 650)])
    table = weigh_table(desk, "EU")
    usual = rank(desk, ask(desk.catalog, Asked(region="EU")))

    assert len(table.rows) == 2
    assert usual.placed[0].product in repr(table.rows[0])
