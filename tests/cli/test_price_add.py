from pathlib import Path

import pytest

from command_line import copied, read, run

ADD = ("price", "add", "tarnquell-liskar-duo", "559", "--seller", "Tollhouse Spokes")


def test_one_line_is_appended_and_nothing_else_is_touched(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    log = folder / "prices.csv"
    before = log.read_bytes()
    result = run(*ADD, "--buyer", "club-racer", catalog=folder)
    assert result.exit_code == 0
    after = log.read_bytes()
    assert after.startswith(before)
    line = b"2026-11-20,tarnquell-liskar-duo,EU,EUR,559.00,in,street,Tollhouse Spokes,,typed in\n"
    assert after[len(before) :].replace(b",559,", b",559.00,") == line
    assert run("check", catalog=folder).exit_code == 0


def test_the_last_line_says_whether_the_pick_changes(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    last = run(*ADD, "--buyer", "club-racer", catalog=folder).stdout.splitlines()[-1]
    assert last == "The pick changes from Brellowick Ferrowen 2 to Tarnquell Liskar Duo."
    assert read("rank", "--buyer", "club-racer", catalog=folder)["pick"] == "tarnquell-liskar-duo"


def test_a_dry_run_writes_nothing(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    before = (folder / "prices.csv").read_bytes()
    found = read(*ADD, "--buyer", "club-racer", "--dry-run", catalog=folder)
    assert (found["written"], found["pick_changes"]) == (False, True)
    assert (folder / "prices.csv").read_bytes() == before


def test_the_regions_own_currency_and_tax_habit_stand_in(tmp_path: Path) -> None:
    found = read(*ADD, "--region", "us", catalog=copied(tmp_path))
    assert (found["price"]["currency"], found["price"]["tax"]) == ("USD", "out")


def test_a_price_dated_after_the_day_changes_nothing_yet(tmp_path: Path) -> None:
    result = run(*ADD, "--date", "2026-12-24", "--buyer", "club-racer", catalog=copied(tmp_path))
    assert result.exit_code == 0
    assert "it is not seen yet" in result.stderr
    assert result.stdout.splitlines()[-1].startswith("The pick stays the same")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--kind", "offer"], "valid_until"),
        (["--kind", "gift"], "kind: "),
        (["--tax", "maybe"], "tax: "),
        (["--region", "MARS"], "the catalog has no region MARS"),
        (["--currency", "QQQ"], "currency: "),
        (["--valid-until", "2020-01-01"], "valid_until"),
        (["--source", "two\nlines"], "cannot be seen"),
        (["--date", "yesterday"], "is not a day"),
        (["--buyer", "nobody-here"], "has no buyer"),
    ],
)
def test_a_line_that_would_not_check_is_refused_before_anything_is_written(
    tmp_path: Path, words: list[str], said: str
) -> None:
    folder = copied(tmp_path)
    before = (folder / "prices.csv").read_bytes()
    result = run(*ADD, *words, catalog=folder)
    assert (result.exit_code, result.stdout) == (2, "")
    assert said in result.stderr
    assert (folder / "prices.csv").read_bytes() == before


@pytest.mark.parametrize("amount", ["55x", "-5", "1,000", "nan", "1e3", "559.123"])
def test_an_amount_that_is_no_plain_number_is_refused(tmp_path: Path, amount: str) -> None:
    result = run("price", "add", "tarnquell-liskar-duo", "--seller", "X", "--", amount, catalog=None)
    assert result.exit_code == 2


def test_the_same_line_twice_is_refused(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    assert run(*ADD, catalog=folder).exit_code == 0
    result = run(*ADD, catalog=folder)
    assert result.exit_code == 2
    assert "stands in the log already" in result.stderr


def test_a_log_that_cannot_be_written_exits_5(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    log = folder / "prices.csv"
    real = tmp_path / "elsewhere.csv"
    log.rename(real)
    log.symlink_to(real)
    result = run(*ADD, catalog=folder)
    assert result.exit_code == 5
    assert "links are not followed" in result.stderr


def test_publish_afterwards_writes_the_site(tmp_path: Path) -> None:
    result = run(*ADD, "--publish", tmp_path / "site", catalog=copied(tmp_path))
    assert result.exit_code == 0
    assert (tmp_path / "site" / "index.html").is_file()
