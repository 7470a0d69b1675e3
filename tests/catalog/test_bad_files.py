"""One file a mistake: the whole printed text of its problems stands beside it in `<case>.expected`.

A case's name begins with the reader it is for; add a reader to READERS when a new kind of file is read.
Write the expected text by hand, or look closely at what `render` gives before it is kept.
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.problems import Problem, render

BAD = Path(__file__).parent / "bad"
CASES = sorted(path.stem for path in BAD.glob("*.yaml"))


def _read_only(path: Path) -> list[Problem]:
    return read_yaml(path, path.name)[1]


READERS: dict[str, Callable[[Path], list[Problem]]] = {
    "yaml-": _read_only,
}
"""Beginning of a case's name: the reading whose problems are expected."""


def _reader(case: str) -> Callable[[Path], list[Problem]]:
    return next(reader for prefix, reader in READERS.items() if case.startswith(prefix))


@pytest.mark.parametrize("case", CASES)
def test_bad_file_is_reported_to_the_letter(case: str) -> None:
    problems = _reader(case)(BAD / f"{case}.yaml")
    assert render(problems, "plain") == (BAD / f"{case}.expected").read_text("utf-8")
    assert problems


def test_every_case_has_a_reader_and_its_expected_text() -> None:
    assert len(CASES) >= 45
    for case in CASES:
        assert _reader(case)
    assert sorted(path.stem for path in BAD.glob("*.expected")) == CASES
