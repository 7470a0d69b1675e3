"""What a log in columns can be asked is light to ask about, and no part of it may be left out."""

import subprocess
import sys

import pytest

from spindlewise.catalog.by_columns import ByColumns
from spindlewise.catalog.long_log import LongLog


def test_a_log_that_leaves_a_question_out_cannot_be_made() -> None:
    class Halfway(ByColumns):
        def __len__(self) -> int:
            return 0

    with pytest.raises(TypeError, match=r"newest.*with_row|abstract"):
        Halfway()  # type: ignore[abstract]
    assert issubclass(LongLog, ByColumns)


def test_a_short_log_imports_nothing_for_it() -> None:
    code = "import sys, spindlewise.catalog.opening; sys.exit('numpy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
