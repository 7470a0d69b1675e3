import worlds
from spindlewise.site.region_table import region_table
from spindlewise.site.weigh_pictures import weigh_pictures


def figures(region="EU", rates=True):
    from dataclasses import replace

    from spindlewise.answer.desk import Desk

    rows = [worlds.price("heron", 500), worlds.price("siskin", 450, line=3)]
    desk = worlds.desk([worlds.product("heron"), worlds.product("siskin")], rows)
    if not rates:
        desk = Desk(replace(desk.catalog, rates=type(desk.catalog.rates)(())), desk.day)
    return weigh_pictures(desk, region_table(desk, region))


def test_the_usual_weighting_has_price_against_score_and_where_scores_come_from():
    front, contributions = figures()
    assert [figure.picture.name for figure in (front, contributions)] == ["price-score", "contributions"]
    assert [row[1] for row in front.table.rows] == ["EUR 450.00", "EUR 500.00"]
    assert {row[0] for row in contributions.table.rows} == {row[0] for row in front.table.rows}
    scores = {row[0]: row[-1] for row in contributions.table.rows}
    assert scores == {row[0]: row[2] for row in front.table.rows}


def test_a_region_that_cannot_be_served_has_none():
    assert figures("JP", rates=False) == ()
