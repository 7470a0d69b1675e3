"""Programs killed (SIGKILL) while they write: acknowledged lines stand, pages are whole; more in the soak."""

from pathlib import Path

import pytest

from faults.killing import CASES, killed
from spindlewise.site import build

RUNS = 5


@pytest.mark.parametrize("case", CASES)
def test_a_killed_program_loses_nothing_it_has_acknowledged(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, case: str
) -> None:
    monkeypatch.setattr(build, "gather_whole", build.gather_whole)  # puts the real one back
    assert killed(case, RUNS, tmp_path) >= RUNS
