from spindlewise.render.blocks import Heading, Paragraph, Section, blocks_of


def test_sections_give_their_blocks_in_order() -> None:
    first, second, third = Heading("a"), Paragraph("b"), Paragraph("c")
    sections = (Section("one", (first, second)), Section("none", ()), Section("two", (third,), keep=True))
    assert blocks_of(sections) == (first, second, third)
