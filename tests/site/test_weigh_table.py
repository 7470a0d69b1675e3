"""The ranking that stands in the page without its script: the usual weighting of one region."""

import pytest

import worlds
from spindlewise.answer.asking import USUAL_POINTS
from spindlewise.answer.market import NoMarket
from spindlewise.site.weigh_table import weigh_table


@pytest.fixture
def desk():
    products = [
        worlds.product(name, {"weight_g": (worlds.weighed(g),)})
        for name, g in (("auk", 300.0), ("brant", 400.0))
    ]
    return worlds.desk(products, [worlds.price("auk", 500), worlds.price("brant", 600)])


def test_columns_are_the_usual_criteria_in_their_order(desk):
    table = weigh_table(desk, "EU")
    assert table.columns == ("price", "weight", "reading_uncertainty", "running_time", "detail")
    assert (table.region, table.currency) == ("EU", "EUR")
    assert table.counts.startswith("What counts: price 30.0 %")


def test_points_of_a_row_add_up_to_its_score(desk):
    for row in weigh_table(desk, "EU").rows:
        assert sum(float(cell.earned) for cell in row.cells) == pytest.approx(row.score.expected, abs=0.3)
        assert [float(cell.most) for cell in row.cells] == list(USUAL_POINTS.values())


def test_bars_are_on_one_scale(desk):
    for row in weigh_table(desk, "EU").rows:
        assert max(cell.room for cell in row.cells) == 100
        assert all(0 <= cell.filled <= 100 for cell in row.cells)


def test_the_first_stands_first_and_the_other_has_its_price(desk):
    first, second = weigh_table(desk, "EU").rows
    assert (first.product, first.first_at) == ("auk", "stands first")
    assert second.first_at == "no price" or second.first_at.startswith("EUR ")
    assert first.price == "EUR 500.00"
    assert first.cells[0].small == first.price_small == "street"


def test_a_region_without_a_market_is_refused(desk):
    with pytest.raises(NoMarket, match="knows no region XX"):
        weigh_table(desk, "XX")
