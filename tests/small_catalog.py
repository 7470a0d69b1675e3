"""The small good catalog in tests/catalog/good, copied and spoilt: what a rule or the reader then says."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.opening import open_catalog
from spindlewise.problems import Problem, render

GOOD = Path(__file__).parent / "catalog" / "good"
Change = tuple[str, str, str]
"""File, the text in it that is replaced (it stands there once), and what takes its place."""


def copied(to: Path) -> Path:
    """A copy of the good catalog in the folder `to`."""
    return Path(shutil.copytree(GOOD, to / "catalog"))


def spoil(folder: Path, *changes: Change) -> None:
    """Make the changes in a copy; a text that does not stand in its file once is a mistake of the test."""
    for name, old, new in changes:
        path = folder / name
        text = path.read_text("utf-8")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {name}"
        path.write_text(text.replace(old, new), "utf-8")


@contextmanager
def standing_in(folder: Path) -> Iterator[None]:
    """Stand in a folder for a while, so that shown file names do not depend on where it lies."""
    before = Path.cwd()
    os.chdir(folder)
    try:
        yield
    finally:
        os.chdir(before)


def opened(parent: Path) -> tuple[Catalog | None, list[Problem]]:
    """Open `parent`/catalog under the shown name `catalog`."""
    with standing_in(parent):
        return open_catalog(Path("catalog"))


def said(parent: Path, *changes: Change) -> str:
    """All problems of the good catalog with these changes, as they are printed."""
    spoil(copied(parent), *changes)
    return render(opened(parent)[1], "plain")
