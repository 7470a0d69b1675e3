import pytest

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


def test_what_cannot_be_seen_takes_the_room_of_its_escape() -> None:
    table = Table("", (Column("Name"), Column("Price")), (("Her\u202eon", "9"), ("Siskin", "10")))
    assert as_terminal((table,), 40, False).splitlines() == [
        "Name         Price",
        "──────────────────",
        "Her\\u202eon  9",
        "Siskin       10",
    ]


def test_each_line_carries_its_own_style() -> None:
    """So that nothing of it runs on where a pager cuts."""
    text = as_terminal((Paragraph("one two three four five six", "caution"), BLOCKS[4]), 19, colour=True)
    first, second, _, head, rule, row = text.splitlines()
    assert first == "\x1b[1;31m! one two three\x1b[0m"
    assert second == "\x1b[1;31mfour five six\x1b[0m"
    assert head.startswith("\x1b[1m")
    assert head.endswith("\x1b[0m")
    assert "\x1b[1" not in rule + row
