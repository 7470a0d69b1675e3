"""Runs the command line in this process on the small catalog in tests/data, and keeps expected pages."""

import json
import os
import shutil
from pathlib import Path
from typing import Any

from typer.testing import CliRunner, Result

from spindlewise.cli.main import app

SMALL = Path(__file__).parent / "data" / "small_catalog"
EXPECTED = Path(__file__).parent / "cli" / "expected"


def run(*words: str | Path, catalog: Path | None = SMALL, columns: int = 80) -> Result:
    """The command as typed; on the small catalog unless another one, or none, is named."""
    typed = [str(word) for word in words]
    if catalog is not None:
        typed += ["--catalog", str(catalog)]
    return CliRunner().invoke(
        app, typed, env={"COLUMNS": str(columns), "NO_COLOR": "1"}, prog_name="spindlewise"
    )


def read(*words: str | Path, code: int = 0, **more: Any) -> dict[str, Any]:
    """The command with --json, as data; the exit code is held to `code`."""
    result = run(*words, "--json", **more)
    assert result.exit_code == code, result.output
    found = json.loads(result.stdout)
    assert isinstance(found, dict)
    return found


def copied(to: Path) -> Path:
    """A copy of the small catalog that may be written to."""
    return Path(shutil.copytree(SMALL, to / "catalog"))


def as_expected(name: str, text: str) -> None:
    """Hold a page to the one in tests/cli/expected; GOLDENS=write writes it anew."""
    path = EXPECTED / name
    if os.environ.get("GOLDENS") == "write":
        path.write_text(text, "utf-8")
    assert text == path.read_text("utf-8")


def widest(text: str) -> int:
    """The length of the longest line."""
    return max(map(len, text.splitlines()))
