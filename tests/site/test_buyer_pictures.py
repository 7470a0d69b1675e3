import pytest

import worlds
from drawn_pictures import in_order
from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import reply_to
from spindlewise.site.buyer_pictures import buyer_pictures


@pytest.fixture(scope="module")
def figures(site):
    desk = Desk(site.catalog, site.day)
    return {name: buyer_pictures(desk, reply_to(desk, buyer)) for name, buyer in site.buyers.items()}


def test_who_rides_something_gets_all_four(figures):
    assert [f.picture.name for f in figures["shorter-cranks"]] == [
        "contributions",
        "stability",
        "ladder",
        "swap",
    ]
    assert [f.picture.name for f in figures["coach"]] == ["contributions", "stability"]
    assert figures["nothing-for-it"] == ()


def test_tables_say_what_the_pictures_show(figures):
    points, places, ladder, _ = figures["club-racer"]
    first = points.table.rows[0]
    assert sum(float(cell) for cell in first[1:-1]) == pytest.approx(float(first[-1]), abs=0.3)
    assert places.table.rows[0][0] == "Brellowick Ferrowen 2"
    assert len(places.table.rows) == len(places.table.columns) - 1
    assert any(row[0].endswith(", held back") for row in places.table.rows)
    assert [row[0] for row in ladder.table.rows if row[0]] == ["1"]
    assert "Yttervane Koldrane" not in {row[1] for row in ladder.table.rows}, "a notice holds it back"
    beside = next(f for f in figures["second-side"] if f.picture.name == "ladder")
    assert "no reliable saving" in {row[2] for row in beside.table.rows}


def test_all_are_in_order(figures):
    for figure in figures["in-pairs"] + figures["club-racer"]:
        in_order(figure.picture)


def test_more_than_fit_are_counted():
    names = [f"pedal-{i:02}" for i in range(14)]
    desk = worlds.desk(
        [worlds.product(n) for n in names], [worlds.price(n, 400 + i) for i, n in enumerate(names)]
    )
    points, places = buyer_pictures(desk, reply_to(desk, worlds.buyer()))
    assert "2 more stand further down." in points.caption
    assert "2 more stand further down." in places.caption
    assert len(points.table.rows) == 14
