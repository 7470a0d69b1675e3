import pytest

from drawn_pictures import in_order, marks, rows_with, texts
from spindlewise.site.chart_stability import chance_text, chances, stability_picture

NAMES = ("Heron", "Siskin", "Plover")
PLACES = ((0.834, 0.1659, 0.0001), (0.166, 0.8, 0.034), (0.0, 0.0341, 0.9659))


def test_a_disc_for_every_place_that_is_ever_taken():
    picture = stability_picture(chances(NAMES, PLACES, 10_000))
    in_order(picture)
    assert {"Heron, place 1: 83 %", "Heron, place 3: under 1 %", "Plover, place 3: 97 %"} <= set(
        marks(picture)
    )
    assert not any(mark.startswith("Plover, place 1") for mark in marks(picture))
    assert {"83", "80", "97", *NAMES} <= set(texts(picture))
    assert "17" not in texts(picture)


def test_the_sentence_names_who_comes_first_how_often():
    picture = stability_picture(chances(NAMES, PLACES, 10_000))
    assert picture.description.endswith("First comes Heron in 83 of 100 worlds; Siskin in 17 of 100 worlds.")


def test_discs_have_areas_in_proportion():
    picture = stability_picture(chances(NAMES, PLACES, 100))
    areas = {row["said"]: row["area"] for row in rows_with(picture, "area")}
    assert areas["Heron, place 1: 83 %"] / areas["Siskin, place 2: 80 %"] == pytest.approx(0.834 / 0.8)


def test_many_products_are_cut_and_all_further_places_are_one():
    names = [f"p{i}" for i in range(20)]
    places = [[0.05] * 20 for _ in names]
    shown = chances(names, places, 1000)
    assert len(shown.names) == len(shown.places) == len(shown.columns) == 12
    assert shown.columns[-1] == "12 on"
    assert all(sum(row) == pytest.approx(1.0) for row in shown.places)
    assert shown.more == 8
    in_order(stability_picture(shown))


def test_all_or_nothing_is_said_only_where_it_is_meant():
    assert [chance_text(c) for c in (0.0, 0.0049, 0.005, 0.995, 0.9951, 1.0)] == [
        "never", "under 1 %", "1 %", "100 %", "over 99 %", "always",
    ]  # fmt: skip
    picture = stability_picture(chances(("a", "b"), ((0.9999, 0.0001), (0.0001, 0.9999)), 10_000))
    assert texts(picture).count(">99") == 2
    assert "100" not in texts(picture)


def test_one_product_alone_has_no_picture():
    assert stability_picture(chances(["a"], [[1.0]], 10)) is None
