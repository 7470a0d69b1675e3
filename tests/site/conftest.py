"""The demo catalog published once for all tests of its pages."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest

from spindlewise.answer.asking import open_buyers
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.opening import open_catalog
from spindlewise.site.build import publish

CATALOG = Path(__file__).parents[2] / "catalog"


@dataclass(frozen=True)
class Site:
    """A published site with what it was made from."""

    catalog: Catalog
    buyers: Mapping[str, Buyer]
    day: date
    folder: Path

    def pages(self) -> list[Path]:
        """All HTML files."""
        return sorted(self.folder.rglob("*.html"))


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    buyers, _ = open_buyers(CATALOG / "buyers", catalog)
    folder = tmp_path_factory.mktemp("site")
    day = date(2026, 11, 20)
    publish(catalog, buyers, day, folder)
    return Site(catalog, buyers, day, folder)
