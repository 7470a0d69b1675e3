"""The page on which readers weigh for themselves, with as many made-up pedals as asked."""

from random import Random

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.site.frame import frame_of
from spindlewise.site.weigh import weigh_page


def page_of(products: int) -> bytes:
    """The page for so many pedals, unlike in weight and price."""
    draw = Random("fifty")
    pedals, prices = [], []
    for k in range(products):
        name = f"pedal-{k:04}"
        weight = worlds.weighed(280 + draw.randint(0, 1500) / 10, 2.0)
        pedals.append(worlds.product(name, {"weight_g": (weight,)}))
        prices.append(worlds.price(name, draw.randint(20_000, 120_000) / 100))
    desk = Desk(worlds.catalog(pedals, prices))
    return weigh_page(desk, frame_of(desk, {}), {})
