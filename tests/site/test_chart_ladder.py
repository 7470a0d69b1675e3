from drawn_pictures import in_order, marks, rows_with, texts
from spindlewise.site.chart_ladder import Rung, ladder_picture


def rung(name, number, saving, extra):
    return Rung(
        name, number, saving - 1.0, saving, saving + 1.0, extra, f"EUR {extra:.0f}", f"{saving:.0f} g"
    )


RUNGS = [rung("Heron", 2, 40.0, 500.0), rung("Siskin", 1, 20.0, 300.0), rung("Plover", 0, -10.0, 200.0)]


def test_steps_are_numbered_and_told_in_order():
    picture = ladder_picture("Old", True, "EUR", True, RUNGS)
    in_order(picture)
    assert picture.description == (
        "Grams saved against money, beginning at the Old. "
        "Steps worth their price: 1: Siskin, 20 g for EUR 300; 2: Heron, 40 g for EUR 500."
    )
    assert {"0", "1", "2", "Costs, EUR"} <= set(texts(picture))
    assert {"Old", "Plover: -10 g, EUR 200"} <= set(marks(picture))


def test_the_line_runs_through_the_steps_and_begins_at_the_baseline_where_that_is_on_it():
    for on_it, steps in ((True, [0, 1, 2]), (False, [1, 2])):
        picture = ladder_picture("Old", on_it, "EUR", False, RUNGS)
        rows = rows_with(picture, "step")
        assert sorted(row["step"] for row in rows if row["step"] is not None) == steps
        assert "Costs more, EUR" in texts(picture)


def test_nothing_worth_its_price_and_nothing_at_all():
    picture = ladder_picture("Old", True, "EUR", True, RUNGS[2:])
    in_order(picture)
    assert picture.description.endswith("No step is worth its price.")
    assert ladder_picture("Old", True, "EUR", True, []) is None


def test_the_order_of_what_is_given_does_not_matter():
    assert ladder_picture("Old", True, "EUR", True, RUNGS) == ladder_picture(
        "Old", True, "EUR", True, RUNGS[::-1]
    )
