from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Bullets, Column, Heading, Paragraph, Table

TABLE = Table(
    "Two pedals", (Column("Name"), Column("Price", "right")), (("Heron", "EUR 9.00"), ("重量", "EUR 10.00"))
)


def test_each_kind_of_block() -> None:
    text = as_text(
        [
            Heading("Title", 1),
            Heading("Part"),
            Paragraph("Plain."),
            Paragraph("Stop.", "caution"),
            Bullets(("one", "two")),
        ]
    )
    assert text == "Title\n=====\n\nPart\n----\n\nPlain.\n\n! Stop.\n\n- one\n- two\n"


def test_a_table_is_aligned_by_cells_and_has_no_trailing_spaces() -> None:
    assert as_text([TABLE]) == (
        "Two pedals:\nName       Price\n-----  ---------\nHeron   EUR 9.00\n重量   EUR 10.00\n"
    )


def test_a_table_that_does_not_fit_becomes_entries() -> None:
    assert (
        as_text([TABLE], 12) == "Two pedals:\n- Heron;\n  price:\n  EUR 9.00\n- 重量; price:\n  EUR 10.00\n"
    )


def test_nothing_is_nothing() -> None:
    assert as_text([]) == ""


def test_no_control_character_gets_through() -> None:
    assert "\x1b" not in as_text([Paragraph("a\x1b[31mb"), Table("", (Column("x"),), (("\x1b[0m",),))])
