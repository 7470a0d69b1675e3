import worlds
from spindlewise.answer.asking import USUAL_POINTS
from spindlewise.site.usual import usual_buyer


def test_the_front_page_weighs_as_a_ranking_without_weights_does():
    catalog = worlds.catalog([worlds.product("heron")], [])
    found = usual_buyer(catalog, "US")
    assert (found.region, found.currency) == ("US", "USD")
    assert found.weights.points == USUAL_POINTS
    assert found.receivers == ()
