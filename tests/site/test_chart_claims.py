from drawn_pictures import in_order, marks, texts
from spindlewise.site.chart_claims import Strayed, claims_picture


def strayed(name, grams, weighed=True, spread=1.0):
    return Strayed(name, grams - spread, grams, grams + spread, weighed, f"{name}: {grams:.0f} g off")


def test_weighed_first_by_how_much_they_stray():
    picture = claims_picture(
        [strayed("b", 2.0), strayed("c", -5.0), strayed("a", 7.0), strayed("p", 9.0, False)]
    )
    in_order(picture)
    assert [s.name for s in picture.shown] == ["a", "b", "c", "p"]
    assert {"a", "b", "c", "p"} <= set(texts(picture))
    assert "c: -5 g off" in marks(picture)
    assert picture.description == (
        "Weighed less claimed, in grams. Of 3 pedals weighed, 2 are heavier than claimed and 1 lighter by "
        "more than the plus-minus. Furthest off: a: 7 g off."
    )


def test_of_very_many_those_that_stray_least_are_left_to_the_table():
    picture = claims_picture([strayed(f"p{i:02}", float(i)) for i in range(50)])
    assert len(picture.shown) == 40
    assert min(s.expected_g for s in picture.shown) == 10.0


def test_none_and_none_weighed():
    assert claims_picture([]) is None
    picture = claims_picture([strayed("p", 0.0, False, 0.0)])
    in_order(picture)
    assert "Furthest" not in picture.description
