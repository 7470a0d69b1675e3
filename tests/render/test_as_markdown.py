import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.render.as_markdown import as_markdown, escaped
from spindlewise.render.blocks import Bullets, Column, Heading, Paragraph, Table


def test_each_kind_of_block() -> None:
    text = as_markdown(
        [
            Heading("A_b", 2),
            Paragraph("Buy *this*.", "important"),
            Paragraph("Stop.", "caution"),
            Bullets(("1. one", "- two")),
            Table("Both", (Column("Name"), Column("Price", "right")), (("a|b", "9 $"),)),
        ]
    )
    assert text == (
        "## A\\_b\n\n**Buy \\*this\\*.**\n\n> **Stop.**\n\n- 1\\. one\n- \\- two\n\n"
        "Both:\n\n| Name | Price |\n| --- | ---: |\n| a\\|b | 9 \\$ |\n"
    )


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("<script>", "\\<script\\>"),
        ("[x](javascript:1)", "\\[x\\](javascript:1)"),
        ("# no heading", "\\# no heading"),
        ("+ no list", "\\+ no list"),
        ("===", "\\==="),
        ("---", "\\---"),
        ("-86 g", "-86 g"),
        ("#1", "#1"),
        ("a & b", "a \\& b"),
        ("12) x", "12\\) x"),
        ("a\nb", "a\\\\nb"),
    ],
)
def test_markup_in_the_text_is_shown_and_not_taken(text: str, safe: str) -> None:
    assert escaped(text) == safe


@settings(deadline=None)
@given(st.text())
def test_a_cell_never_opens_another_cell_nor_a_line(text: str) -> None:
    safe = escaped(text)
    assert "\n" not in safe
    assert safe.replace("\\\\", "").replace("\\|", "").count("|") == 0


def test_nothing_is_nothing() -> None:
    assert as_markdown([]) == ""
