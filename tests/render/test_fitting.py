from spindlewise.render.blocks import Column, Table
from spindlewise.render.fitting import as_entries, cells_wide, fitted, table_width, without_column

TABLE = Table(
    "",
    (Column("Name"), Column("Weight", "right", spare=1), Column("Price", spare=2), Column("Rest", spare=2)),
    (("Heron One", "346 g", "EUR 9.00", "x"), ("Siskin", "", "EUR 10.00", "y")),
)


def test_the_width_counts_the_gaps() -> None:
    assert table_width(TABLE) == 9 + 2 + 6 + 2 + 9 + 2 + 4


def test_the_most_spare_columns_go_first_the_last_of_equals_before_the_others() -> None:
    assert fitted(TABLE, 99) == TABLE
    assert [c.title for c in fitted(TABLE, 33).columns] == ["Name", "Weight", "Price"]
    assert [c.title for c in fitted(TABLE, 18).columns] == ["Name", "Weight"]


def test_a_column_that_cannot_be_spared_stays_however_narrow_it_is() -> None:
    small = fitted(TABLE, 3)
    assert [c.title for c in small.columns] == ["Name"]
    assert small.rows == (("Heron One",), ("Siskin",))


def test_one_column_less() -> None:
    assert without_column(TABLE, 0).rows[0] == ("346 g", "EUR 9.00", "x")


def test_entries_leave_out_what_is_empty() -> None:
    assert as_entries(TABLE).items == (
        "Heron One; weight: 346 g; price: EUR 9.00; rest: x",
        "Siskin; price: EUR 10.00; rest: y",
    )


def test_combining_marks_take_no_room() -> None:
    assert cells_wide("e\u0301") == 1
