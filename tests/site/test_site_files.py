import pytest

from spindlewise.catalog.durable import CannotWrite
from spindlewise.site.site_files import read_file, through_link


def test_a_file_is_read_and_one_that_is_not_there_is_none(tmp_path):
    (tmp_path / "one.html").write_bytes(b"one")
    assert read_file(tmp_path / "one.html") == b"one"
    assert read_file(tmp_path / "two.html") is None
    assert read_file(tmp_path / "one.html" / "below.html") is None
    (tmp_path / "folder.html").mkdir()
    with pytest.raises(CannotWrite, match=r"folder\.html"):
        read_file(tmp_path / "folder.html")


def test_a_link_is_found_wherever_it_stands_on_the_way(tmp_path):
    (tmp_path / "real").mkdir()
    (tmp_path / "real" / "one.html").write_bytes(b"one")
    (tmp_path / "led").symlink_to(tmp_path / "real")
    (tmp_path / "real" / "two.html").symlink_to(tmp_path / "real" / "one.html")
    assert not through_link(tmp_path, "real/one.html")
    assert through_link(tmp_path, "led/one.html")
    assert through_link(tmp_path, "real/two.html")
    assert not through_link(tmp_path / "led", "one.html"), "the site's own folder may be a link"
