from spindlewise.render.blocks import Column, Table
from spindlewise.site.figured import figured
from spindlewise.site.picture import Picture

TABLE = Table("Said", (Column("What"),), (("this",),))


def test_a_figure_has_its_table_as_a_section_of_its_own():
    (found,) = figured(Picture("kind", "Title", "Said", dict, ()), "Look here", TABLE)
    assert found.section.name == "kind"
    assert found.section.blocks == (TABLE,)


def test_without_a_picture_there_is_no_figure():
    assert figured(None, "Look here", TABLE) == ()
