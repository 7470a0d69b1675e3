"""A page to print is whole, valid and fetches nothing."""

import html5lib

import worlds
from spindlewise.answer.bench_sheet import pre_test
from spindlewise.render.as_print import as_print
from spindlewise.render.blocks import Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.words_sheet import sheet_blocks

BLOCKS = (
    Heading("A <b> & c", 1),
    Paragraph("quiet", "quiet"),
    Paragraph("loud", "caution"),
    Bullets(("one", "two <i>")),
    Table("a table", (Column("What"), Column("Much", "right")), (("x", "1 & 2"),)),
    Table("", (Column("What"),), ()),
)


def test_the_page_is_valid_and_escaped() -> None:
    text = as_print(BLOCKS, "T <x>")
    html5lib.HTMLParser(strict=True).parse(text)
    assert "<title>T &lt;x&gt;</title>" in text
    assert "<h1>A &lt;b&gt; &amp; c</h1>" in text
    assert "<p><strong>loud</strong></p>" in text
    assert '<th scope="row">x</th><td class="right">1 &amp; 2</td>' in text
    assert "<li>two &lt;i&gt;</li>" in text
    assert text.count("<caption>") == 1


def test_a_sheet_prints_without_a_script_or_an_address() -> None:
    text = as_print(
        sheet_blocks(pre_test(worlds.product("some-pedal"), worlds.DAY, ["hub"])), "Before the ride"
    )
    html5lib.HTMLParser(strict=True).parse(text)
    assert "<script" not in text
    assert "http" not in text
