import pytest

from drawn_pictures import in_order, marks, rows_with, texts
from spindlewise.site.chart_contributions import contributions, contributions_picture


def shown(count=2, names=None):
    names = names or [f"Pedal {i}" for i in range(count)]
    merits = [[0.5, 1.0]] * len(names)
    return contributions(
        names, ["Price", "Uncertainty of the reading"], [0.7, 0.3], merits, [65.0] * len(names)
    )


def test_points_add_up_to_the_score():
    found = shown()
    assert found.most == pytest.approx((70.0, 30.0))
    assert all(sum(row) == pytest.approx(65.0) for row in found.points)


def test_what_is_earned_stands_beside_what_is_given():
    picture = contributions_picture(shown())
    in_order(picture)
    assert "Pedal 0, Price: 35.0 of 70.0 points" in marks(picture)
    assert {"35.0", "30.0", "65.0", "Score", "Price", "Pedal 1"} <= set(texts(picture))


def test_bars_are_on_one_scale():
    rows = rows_with(contributions_picture(shown()), "full")
    lengths = [row["full"] - row["start"] for row in rows[:2]]
    assert lengths[0] / lengths[1] == pytest.approx(7 / 3, abs=0.01)
    earned = [row["end"] - row["start"] for row in rows[:2]]
    assert earned == pytest.approx([lengths[0] / 2, lengths[1]], abs=0.02)


def test_many_products_are_cut_and_said_to_be():
    assert shown(15).more == 3
    assert len(shown(15).names) == 12


def test_long_names_and_no_names():
    in_order(contributions_picture(shown(names=["N" * 60, "<b>&"])))
    assert contributions_picture(contributions([], ["Price"], [1.0], [], [])) is None
