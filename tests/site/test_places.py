import worlds
from spindlewise.answer.ranking import rank
from spindlewise.site.places import place_text


def places(**weights):
    products = [
        worlds.product(name, {"weight_g": (worlds.weighed(grams, spread),)})
        for name, (grams, spread) in weights.items()
    ]
    desk = worlds.desk(products, [worlds.price(name, 500, line=i) for i, name in enumerate(weights, 2)])
    return {p.product: place_text(p) for p in rank(desk, worlds.buyer({"weight": 1})).placed}


def test_clear_places_are_numbers():
    assert places(heron=(300, 1.0), siskin=(320, 1.0), plover=(340, 1.0)) == {
        "heron": "1",
        "siskin": "2",
        "plover": "3",
    }


def test_level_places_are_a_range():
    assert places(heron=(300, 4.0), siskin=(301, 4.0), plover=(340, 1.0)) == {
        "heron": "1 to 2",
        "siskin": "1 to 2",
        "plover": "3",
    }
