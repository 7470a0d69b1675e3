from datetime import date

import pytest
import typer

from command_line import SMALL, run
from spindlewise.cli.options import day_from


def test_options_hold_before_the_command_and_after_it() -> None:
    after = run("rank", "--buyer", "club-racer", "--json", "--as-of", "2026-11-01")
    before = run(
        "--catalog", SMALL, "--as-of", "2026-11-01", "--json", "rank", "--buyer", "club-racer", catalog=None
    )
    assert before.exit_code == after.exit_code == 0
    assert before.stdout == after.stdout
    assert '"as_of": "2026-11-01"' in before.stdout


def test_what_stands_after_the_command_counts() -> None:
    result = run("--as-of", "2020-01-01", "rank", "--buyer", "club-racer", "--json", "--as-of", "2026-11-01")
    assert '"as_of": "2026-11-01"' in result.stdout


@pytest.mark.parametrize("text", ["2026-13-01", "20261101", "2026-W01-1", "today", "", "2026-11-1"])
def test_a_day_that_is_none_is_wrong_usage(text: str) -> None:
    with pytest.raises(typer.BadParameter, match="is not a day"):
        day_from(text)
    assert run("rank", "--as-of", text).exit_code == 2


def test_a_day_stays_a_day() -> None:
    assert day_from(date(2026, 11, 1)) == day_from("2026-11-01") == date(2026, 11, 1)
