import pytest

from drawn_pictures import in_order, marks, texts
from spindlewise.site.charts import Point, described, front, price_score_picture
from spindlewise.site.picture import drawn


def point(name, price, score, held_back=False, spread=1.0):
    return Point(name, price, f"EUR {price:.2f}", score - spread, score, score + spread, held_back)


POINTS = [
    point("Heron", 300.0, 50.0),
    point("Siskin", 400.0, 45.0),
    point("Plover", 500.0, 70.0),
    point("Dunlin", 200.0, 90.0, held_back=True),
]


def test_the_front_is_who_nobody_beats_on_both():
    assert [p.name for p in front(POINTS)] == ["Heron", "Plover"]


def test_the_front_against_a_plain_twin():
    points = [point(f"p{i}", float(i * 7919 % 97), float(i * 104729 % 89)) for i in range(60)]

    def beaten(p):
        return any(
            q.price <= p.price and q.expected >= p.expected and (q.price, q.expected) != (p.price, p.expected)
            for q in points
        )

    assert {p.name for p in front(points)} == {p.name for p in points if not beaten(p)}


def test_of_two_alike_the_first_by_name_stands():
    assert [p.name for p in front([point("b", 1.0, 5.0), point("a", 1.0, 5.0)])] == ["a"]


def test_the_sentence_says_what_the_picture_shows():
    assert described(POINTS) == (
        "Price against score of 4 pedals. Undominated, from the cheapest on: "
        "Heron at EUR 300.00 scores 50.0; Plover at EUR 500.00 scores 70.0. "
        "Held back by a safety notice: Dunlin."
    )


def test_text_is_text_the_front_is_numbered_and_marks_say_what_they_are():
    picture = price_score_picture(POINTS, "EUR")
    in_order(picture)
    assert {"1", "2", "Price, EUR", "Score", "0", "100"} <= set(texts(picture))
    assert "3" not in texts(picture)
    assert "Siskin: EUR 400.00, score 45.0" in marks(picture)


def test_the_same_points_in_any_order_give_the_same_picture():
    assert price_score_picture(POINTS, "EUR") == price_score_picture(POINTS[::-1], "EUR")


def test_hostile_names_stay_text():
    name = "\"><script>alert(1)</script>&'"
    picture = price_score_picture([point(name, 300.0, 50.0), *POINTS[2:]], "EUR")
    assert "<script" not in drawn(picture)
    assert f"{name}: EUR 300.00, score 50.0" in marks(picture)


@pytest.mark.parametrize("points", [[point("Heron", 0.0, 0.0)], [point("Heron", 300.0, 100.0, spread=0.0)]])
def test_one_point_is_a_chart_too(points):
    in_order(price_score_picture(points, "EUR"))


def test_no_points_no_chart():
    assert price_score_picture([], "EUR") is None
