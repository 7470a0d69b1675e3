"""Links to the weighing page that an older version made still say the same; newer ones are refused."""

from pathlib import Path
from urllib.parse import unquote

import pytest

from browser.weigh.reader import settled

LINKS = (Path(__file__).parents[1] / "data" / "kept" / "link-1.txt").read_text("utf-8").splitlines()

pytestmark = pytest.mark.browser


def opened(read, link):
    reader = read(1280)
    reader.page.goto((reader.folder / "weigh.html").as_uri() + link)
    return reader, settled(reader.page)


@pytest.mark.parametrize("link", LINKS)
def test_a_kept_link_says_what_it_said(read, link):
    reader, page = opened(read, link)
    assert not page.locator("#w-link-note").is_visible()
    copied = page.locator("#w-copy-link").input_value().partition("#")[2]
    assert sorted(unquote(copied).split("&")) == sorted(unquote(link[1:]).split("&"))
    assert reader.said == []


@pytest.mark.parametrize("version", [2, 10, 999])
def test_a_link_of_a_newer_version_is_refused_with_advice(read, version):
    reader, page = opened(read, LINKS[0].replace("v=1", f"v={version}"))
    note = page.locator("#w-link-note").inner_text()
    assert "newer edition of this page" in note
    assert "update Spindlewise and publish again" in note
    assert page.locator("#w-table tbody tr").count() > 5
    assert reader.said == []
