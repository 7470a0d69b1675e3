from datetime import date

import pytest

import worlds
from spindlewise.answer.paid import Paid
from spindlewise.answer.standing import Standing
from spindlewise.render.words_figures import KEY, full_words, graded_words, paid_words, value_words

DAY = date(2026, 3, 14)


@pytest.mark.parametrize("origin", ["unknown", "none", "not applicable"])
def test_three_kinds_of_nothing_stay_three(origin: str) -> None:
    standing = Standing("weight", None, None, None, "g", origin, None, "why")  # type: ignore[arg-type]
    assert value_words(standing) == graded_words(standing) == origin
    assert full_words(standing) == f"{origin} (why)"


def test_a_figure_comes_with_interval_grade_day_source_and_basis() -> None:
    standing = Standing("weight", 346.0, 345.0, 347.0, "g", "measured", DAY, "bench", "pair")
    assert full_words(standing) == "346 g (measured; 345 to 347 g; 2026-03-14; bench; pair)"


def test_an_interval_of_no_width_is_left_out_and_none_stated_is_said() -> None:
    standing = Standing("weight", 346.0, 346.0, 346.0, "g", "claimed", None, "")
    assert full_words(standing) == "346 g (claimed; no plus-minus stated)"
    warranty = Standing("warranty", 2.0, None, None, "years", "claimed", None, "")
    assert full_words(warranty) == "2 years (claimed)", "a warranty has no plus-minus to state"
    worked_out = Standing("reading_uncertainty", 2.3, 2.3, 2.3, "%", "worked out", None, "")
    assert full_words(worked_out) == "2.3 % (worked out)"


def test_both_ends_of_an_interval_are_rounded_alike() -> None:
    standing = Standing("weight", 314.1, 312.2, 316.0, "g", "predicted", None, "")
    assert full_words(standing) == "314 g (predicted; 312 to 316 g)"


def test_money_prints_in_its_own_decimals_and_words_as_they_are() -> None:
    assert (
        value_words(Standing("ownership", 98000.0, None, None, "JPY", "worked out", None, "")) == "JPY 98,000"
    )
    assert (
        value_words(Standing("detail", "power only", None, None, "", "worked out", None, "")) == "power only"
    )
    assert graded_words(Standing("price", 9.5, None, None, "EUR", "observed price", None, "")) == "EUR 9.50"


def test_no_source_leaves_the_bare_word() -> None:
    assert full_words(Standing("weight", None, None, None, "g", "unknown", None, "")) == "unknown"


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({}, "street price at Quayside Wheels, seen 2026-10-01"),
        ({"kind": "list"}, "list price of Quayside Wheels, seen 2026-10-01"),
        (
            {"kind": "offer", "valid_until": date(2026, 12, 1)},
            "offer at Quayside Wheels, seen 2026-10-01, last day 2026-12-01",
        ),
        ({"kind": "clearance"}, "clearance price at Quayside Wheels, seen 2026-10-01"),
    ],
)
def test_a_price_says_whose_and_when(changes: dict, said: str) -> None:  # type: ignore[type-arg]
    row = worlds.price("a", 500, **changes)
    assert paid_words(Paid(row.amount, "EUR", row, (), 50), 120) == f"EUR 500.00 ({said})"


def test_an_old_price_and_a_conversion_are_said() -> None:
    row = worlds.price("a", 500)
    text = paid_words(Paid(row.amount, "EUR", row, ("tax of 20 % added",), 200), 120)
    assert text.endswith("an old price, 200 days, tax of 20 % added)")


def test_the_key_explains_every_grade() -> None:
    for word in (
        "measured",
        "reported",
        "claimed",
        "predicted",
        "worked out",
        "unknown",
        "none",
        "not applicable",
    ):
        assert f"{word}: " in KEY
