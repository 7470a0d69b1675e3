"""The page on which readers weigh for themselves, alone in a folder, and the demo behind it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from spindlewise.answer.asking import open_buyers
from spindlewise.answer.desk import Desk
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.opening import open_catalog
from spindlewise.site.frame import frame_of
from spindlewise.site.weigh import weigh_page

CATALOG = Path(__file__).parents[3] / "catalog"


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    found, problems = open_catalog(CATALOG)
    assert found is not None, problems
    return found


@pytest.fixture(scope="session")
def buyers(catalog: Catalog) -> dict[str, Buyer]:
    found, _ = open_buyers(CATALOG / "buyers", catalog)
    return found


@pytest.fixture(scope="session")
def desk(catalog: Catalog) -> Desk:
    return Desk(catalog)


@pytest.fixture(scope="session")
def folder(tmp_path_factory: pytest.TempPathFactory, desk: Desk, buyers: dict[str, Buyer]) -> Path:
    """This page alone, from the disk."""
    out = tmp_path_factory.mktemp("weighed")
    (out / "weigh.html").write_bytes(weigh_page(desk, frame_of(desk, buyers), buyers))
    return out


@pytest.fixture(scope="module")
def plain_page(chromium: Any, folder: Path) -> Iterator[Any]:
    """One page load for all that only calls the script's functions."""
    page = chromium.new_page()
    page.goto((folder / "weigh.html").as_uri())
    yield page
    page.close()
