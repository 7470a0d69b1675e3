import pytest

from command_line import SMALL, as_expected, read, run, widest


def test_the_ranking_at_a_price_that_is_not_yet_true() -> None:
    result = run("price", "at", "tarnquell-liskar-duo", "500", "--buyer", "club-racer")
    assert result.exit_code == 0
    assert widest(result.stdout) <= 80
    as_expected("price-at.txt", result.stdout)


def test_at_its_break_even_price_the_pick_changes_and_a_cent_above_it_does_not() -> None:
    order = read("rank", "--buyer", "club-racer")["order"]
    rival = order[1]
    even = rival["break_even"]["amount"]
    above = f"{float(even) + 0.01:.2f}"
    at = read("price", "at", rival["product"], even, "--buyer", "club-racer")
    beyond = read("price", "at", rival["product"], above, "--buyer", "club-racer")
    scores = {p["product"]: p["score"]["expected"] for p in at["ranking"]["order"]}
    assert scores[rival["product"]] >= scores[order[0]["product"]]
    assert beyond["pick_changes"] is False


def test_nothing_is_written() -> None:
    before = (SMALL / "prices.csv").read_bytes()
    found = read("price", "at", "tarnquell-liskar-duo", "500", "--buyer", "club-racer")
    assert found["written"] is False
    assert (SMALL / "prices.csv").read_bytes() == before


def test_a_price_in_another_currency_is_converted() -> None:
    found = read("price", "at", "tarnquell-liskar-duo", "500", "--currency", "usd", "--buyer", "club-racer")
    paid = next(p for p in found["ranking"]["order"] if p["product"] == "tarnquell-liskar-duo")["price"]
    assert paid["currency"] == "EUR"
    assert paid["amount"] != "500.00"
    assert paid["conversion"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["tarnquell-liskar-du", "500"], "did you mean tarnquell-liskar-duo?"),
        (["tarnquell-liskar-duo", "cheap"], "is no amount"),
        (["tarnquell-liskar-duo", "500.123"], "more decimals"),
        (["tarnquell-liskar-duo", "500", "--currency", "QQQ"], "no currency in circulation"),
    ],
)
def test_what_cannot_be_understood_is_wrong_usage(words: list[str], said: str) -> None:
    result = run("price", "at", *words, "--buyer", "club-racer")
    assert (result.exit_code, result.stdout) == (2, "")
    assert said in result.stderr
