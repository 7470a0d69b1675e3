"""Whether any weights at all would put a product first."""

import worlds
from spindlewise.answer.could_lead import could_lead
from spindlewise.answer.ranking import rank


def test_light_leads_by_weight_cheap_by_price_and_the_dominated_by_nothing():
    products = [
        worlds.product(name, {"weight_g": (worlds.weighed(weight),)})
        for name, weight in (("cheap", 400.0), ("light", 290.0), ("worse", 410.0))
    ]
    prices = [worlds.price(name, amount) for name, amount in (("cheap", 300), ("light", 800), ("worse", 350))]
    found = could_lead(rank(worlds.desk(products, prices), worlds.buyer(points={"price": 1, "weight": 1})))

    assert {lead.product: lead.shares for lead in found} == {
        "cheap": {"price": 1.0, "weight": 0.0},
        "light": {"price": 0.0, "weight": 1.0},
        "worse": None,
    }
