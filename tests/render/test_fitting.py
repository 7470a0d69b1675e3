from spindlewise.render.blocks import Column, Table
from spindlewise.render.fitting import NARROWEST, as_entries, cells_wide, fitted, table_width, without_column

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


def test_cells_that_may_wrap_go_on_in_rows_of_their_own() -> None:
    columns = (Column("Cause"), Column("Spread", "right"), Column("Note", wraps=True))
    note = "ten degrees without a new zero offset"
    table = Table("", columns, (("drift", "0.7 %", note), ("bias", "0.2 %", "short")))
    small = fitted(table, 36)
    assert small.rows == (
        ("drift", "0.7 %", "ten degrees without a"),
        ("", "", "new zero offset"),
        ("bias", "0.2 %", "short"),
    )
    assert table_width(small) <= 36
    assert fitted(table, 80) == table


def test_no_column_is_cut_so_narrow_that_nobody_reads_it() -> None:
    columns = (Column("Cause"), Column("Note", wraps=True))
    table = Table("", columns, (("a cause of some length", "a note " * 8),))
    assert fitted(table, 24 + NARROWEST) != table
    assert fitted(table, 23 + NARROWEST) == table


def test_the_widest_column_gives_way_first() -> None:
    columns = (Column("A", wraps=True), Column("B", wraps=True))
    table = Table("", columns, (("power and balance", "power, balance and stroke metrics"),))
    assert fitted(table, 40).rows == (("power and balance", "power, balance and"), ("", "stroke metrics"))
