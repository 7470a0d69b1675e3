import urllib.error
import urllib.request
from pathlib import Path

import pytest

from spindlewise.cli.serving import served


def got(address: str) -> str:
    with urllib.request.urlopen(address, timeout=20) as answer:
        assert answer.headers["Cache-Control"] == "no-store"
        return str(answer.read().decode())


def test_it_listens_on_loopback_alone_and_shows_nothing_beside_the_site(tmp_path: Path) -> None:
    (tmp_path / "site").mkdir()
    (tmp_path / "site" / "index.html").write_text("the page", "utf-8")
    (tmp_path / "secret.txt").write_text("not for the site", "utf-8")
    with served(tmp_path / "site", 0) as address:
        assert address.startswith("http://127.0.0.1:")
        assert got(f"{address}index.html") == "the page"
        for outside in ("../secret.txt", "%2e%2e/secret.txt"):
            with pytest.raises(urllib.error.HTTPError, match="404"):
                got(address + outside)
