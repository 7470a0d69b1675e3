"""Debian's chromium on the published demo, from the disk, with every request and console line kept."""

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from spindlewise.answer.asking import open_buyers
from spindlewise.catalog.opening import open_catalog
from spindlewise.site.build import publish

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
CATALOG = Path(__file__).parents[2] / "catalog"


@pytest.fixture(scope="session")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    buyers, _ = open_buyers(CATALOG / "buyers", catalog)
    out = tmp_path_factory.mktemp("browsed")
    assert not isinstance(catalog.settings.as_of, str)
    publish(catalog, buyers, catalog.settings.as_of, out)
    return out


@pytest.fixture(scope="session")
def chromium() -> Iterator[Any]:
    if not CHROMIUM.exists():
        if os.environ.get("CI") == "true":
            pytest.fail(f"{CHROMIUM} is not there; the browser tests must run here")
        pytest.skip(f"{CHROMIUM} is not there")
    sync = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    with sync.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        yield browser
        browser.close()


@dataclass
class Reader:
    """One reader's window with all that it asked for and said."""

    page: Any
    folder: Path
    requests: list[str] = field(default_factory=list)
    said: list[str] = field(default_factory=list)

    def open(self, name: str) -> Any:
        self.page.goto((self.folder / name).as_uri())
        return self.page


@pytest.fixture
def read(chromium: Any, folder: Path) -> Iterator[Any]:
    contexts = []

    def begin(width: int = 1280, **options: Any) -> Reader:
        context = chromium.new_context(viewport={"width": width, "height": 900}, **options)
        contexts.append(context)
        reader = Reader(context.new_page(), folder)
        reader.page.on("request", lambda request: reader.requests.append(request.url))
        reader.page.on("console", lambda message: reader.said.append(message.text))
        reader.page.on("pageerror", lambda error: reader.said.append(str(error)))
        return reader

    yield begin
    for context in contexts:
        context.close()
