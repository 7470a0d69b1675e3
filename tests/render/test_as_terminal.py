import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from small_answers import desk, reply
from spindlewise.render.as_terminal import as_terminal
from spindlewise.render.blocks import Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.words_rank import rank_blocks
from spindlewise.render.words_reply import reply_blocks

BLOCKS = (
    Heading("Title", 1),
    Paragraph("[bold]not markup[/bold] :smile: 346 g", "important"),
    Paragraph("Stop.", "caution"),
    Bullets(("one [x]", "two")),
    Table("", (Column("Name"), Column("Price", "right", spare=1)), (("Heron", "EUR 9.00"),)),
)


def test_without_colour_there_is_no_escape_and_no_markup_is_taken() -> None:
    text = as_terminal(BLOCKS, 80, colour=False)
    assert "\x1b" not in text
    assert "[bold]not markup[/bold] :smile: 346 g" in text
    assert " - one [x]\n - two\n" in text
    assert "! Stop." in text


def test_with_colour_the_same_words_are_there() -> None:
    import re

    coloured = as_terminal(BLOCKS, 80, colour=True)
    assert "\x1b[1" in coloured
    plain = re.sub(r"\x1b\[[0-9;]*m", "", coloured)
    assert [line.rstrip() for line in plain.splitlines()] == as_terminal(BLOCKS, 80, False).splitlines()


@pytest.mark.parametrize("width", [40, 60, 80, 100, 120, 200])
@pytest.mark.parametrize("name", ["club-racer", "phone-only", "nothing-for-it"])
def test_no_line_is_wider_than_the_screen_and_no_cell_is_cut(name: str, width: int) -> None:
    found = reply(name)
    for blocks in (
        reply_blocks(desk().catalog, found),
        rank_blocks(desk().catalog, found.ranking, explain=True),
    ):
        text = as_terminal(blocks, width, colour=False)
        # an address is one word and stays whole, so that it can be followed
        prose = [line for line in text.splitlines() if not line.startswith("weigh.html#")]
        assert max(map(len, prose)) <= width
        assert len(text.splitlines()) - len(prose) <= 1
        assert "…" not in text


def test_a_table_without_room_becomes_entries() -> None:
    wide = Table("Names", (Column("First name"), Column("Second name")), (("Heron the First", "Siskin"),))
    assert as_terminal((wide,), 20, False) == "Names:\n - Heron the First;\n   second name:\n   Siskin\n"


def test_nothing_is_nothing() -> None:
    assert as_terminal((), 80, colour=False) == ""


def drawn_by_a_library(table: Table, width: int) -> str:
    """The same table as rich draws it, with its own gaps and its divider."""
    from rich.box import SIMPLE_HEAD
    from rich.console import Console
    from rich.table import Table as Drawn
    from rich.text import Text

    console = Console(file=io.StringIO(), width=width, color_system=None, _environ={})
    drawn = Drawn(box=SIMPLE_HEAD, show_edge=False, pad_edge=False, padding=(0, 1, 0, 0))
    for column in table.columns:
        drawn.add_column(Text(column.title), justify=column.align, no_wrap=True)
    for row in table.rows:
        drawn.add_row(*map(Text, row))
    with console.capture() as captured:
        console.print(drawn)
    return "\n".join(line.rstrip() for line in captured.get().rstrip("\n").split("\n")) + "\n"


CELLS = st.text("aZ0 .,-±…é─重量", max_size=9).map(str.strip)


@settings(deadline=None)
@given(st.data(), st.integers(1, 4))
def test_tables_are_drawn_as_a_general_library_draws_them(data: st.DataObject, columns: int) -> None:
    heads = [
        Column(data.draw(CELLS) + "x", data.draw(st.sampled_from(["left", "right"]))) for _ in range(columns)
    ]
    rows = data.draw(st.lists(st.tuples(*[CELLS] * columns), max_size=4))
    table = Table("", tuple(heads), tuple((*row[:-1], row[-1] + ".") for row in rows))
    assert as_terminal((table,), 200, colour=False) == drawn_by_a_library(table, 200)


def test_what_cannot_be_seen_takes_the_room_of_its_escape() -> None:
    table = Table("", (Column("Name"), Column("Price")), (("Her\u202eon", "9"), ("Siskin", "10")))
    assert as_terminal((table,), 40, False).splitlines() == [
        "Name         Price",
        "──────────────────",
        "Her\\u202eon  9",
        "Siskin       10",
    ]


def test_each_line_carries_its_own_style() -> None:
    text = as_terminal((Paragraph("one two three four five six", "caution"), BLOCKS[4]), 19, colour=True)
    assert text.splitlines() == [
        "\x1b[1;31m! one two three\x1b[0m",
        "\x1b[1;31mfour five six\x1b[0m",
        "",
        "\x1b[1mName      Price\x1b[0m",
        "───────────────",
        "Heron  EUR 9.00",
    ]
