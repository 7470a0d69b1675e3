import pytest

from command_line import as_expected, read, run, widest


@pytest.mark.parametrize("columns", [80, 120])
def test_the_record_is_told(columns: int) -> None:
    result = run("price", "history", "tarnquell-liskar-duo", "--region", "eu", columns=columns)
    assert result.exit_code == 0
    assert widest(result.stdout) <= columns
    as_expected(f"history-{columns}.txt", result.stdout)


def test_nothing_dated_later_is_seen() -> None:
    early = read("price", "history", "tarnquell-liskar-duo", "--as-of", "2025-06-01")
    assert early["prices"]
    assert all(price["date"] <= "2025-06-01" for price in early["prices"])
    assert len(read("price", "history", "tarnquell-liskar-duo")["prices"]) > len(early["prices"])


def test_before_its_first_price_there_is_none() -> None:
    result = run("price", "history", "tarnquell-liskar-duo", "--as-of", "2020-01-01")
    assert result.exit_code == 0
    assert "No price was seen by 2020-01-01." in result.stdout


def test_json_keeps_amounts_as_text() -> None:
    found = read("price", "history", "tarnquell-liskar-duo")
    assert found["schema"] == "spindlewise price history 1"
    assert all(isinstance(price["amount"], str) for price in found["prices"])
    assert {price["state"] for price in found["prices"]} == {"in force", "replaced", "expired"}


def test_all_prices_are_shown_where_all_are_wanted() -> None:
    # the demo has no record longer than what is shown anyway
    assert run("price", "history", "tarnquell-liskar-duo", "--all").stdout == (
        run("price", "history", "tarnquell-liskar-duo").stdout
    )
