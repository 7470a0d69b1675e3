from spindlewise.reception.budget import Budget
from spindlewise.reception.crank_setting import crank_setting_error
from spindlewise.reception.doubled_side import doubled_error
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty
from spindlewise.reception.unmeasured import Plausible, Unmeasured
from spindlewise.render.blocks import Table
from spindlewise.render.words_budget import budget_blocks, trust_words


def table(budget: Budget) -> Table:
    (found,) = budget_blocks(budget)
    assert isinstance(found, Table)
    return found


def test_the_largest_cause_is_named_and_heads_the_table() -> None:
    budget = reading_uncertainty(
        "one side doubled",
        tolerance_pct=1.5,
        doubled=doubled_error((0.47, 0.49), "left"),
        temperature_pct=0.5,
        crank=crank_setting_error(170.0, 172.5),
    )
    assert trust_words(budget, "phone").endswith(
        "of the truth in about 19 cases of 20, worked out from claims. "
        "Most of that comes from the doubled side."
    )
    found = table(budget)
    assert found.caption == "What that figure is made of"
    assert [row[0] for row in found.rows] == [
        "doubled side",
        "claimed tolerance",
        "crank length setting",
        "temperature",
        "together",
    ]
    assert found.rows[0][1:] == ("-4.00 %", "1.15 %", "the buyer's own balance")
    assert found.rows[2][1:] == ("-1.45 %", "0", "170 mm set, 172.5 mm ridden")


def test_the_last_row_adds_up_what_stands_above_it() -> None:
    budget = reading_uncertainty("both sides", tolerance_pct=1.5, bench=BenchEvidence(-1.0, 0.6, 0.0))
    assert table(budget).rows[-1] == (
        "together",
        "-1.00 %",
        "0.60 %",
        "steady error and 2 times the spread: 2.2 %",
    )


def test_what_is_left_out_and_what_is_missing_is_said() -> None:
    left_out = trust_words(reading_uncertainty("both sides", tolerance_pct=1.5), "phone")
    assert "not in this figure, since nothing is known of it: temperature" in left_out
    missing = reading_uncertainty("both sides", tolerance_pct=None, temperature_pct=0.5)
    assert trust_words(missing, "phone").endswith("cannot be said; not known: claimed tolerance.")
    assert [row[0] for row in table(missing).rows] == ["temperature"]
    nothing = reading_uncertainty("nothing", tolerance_pct=1.5)
    assert trust_words(nothing, "phone").endswith("cannot be said; nothing arrives.")
    assert budget_blocks(nothing) == ()


def test_what_nobody_has_measured_stands_in_the_table_and_in_the_sentence() -> None:
    spans = Unmeasured(temperature=Plausible(0.3, 1.2), bench_spread=Plausible(0.6, 1.5))
    budget = reading_uncertainty("both sides", tolerance_pct=1.5, unmeasured=spans)
    said = trust_words(budget, "phone")
    assert "worked out from claims" in said
    assert said.endswith(
        "Not measured: bench spread and temperature; the worst that is plausible counts "
        "(at best the figure would be 2.1 %)."
    )
    assert table(budget).rows[0] == (
        "bench spread",
        "0",
        "1.50 %",
        "no bench ride: 0.6 to 1.5 % is plausible, 1.5 % counts",
    )
    tried = reading_uncertainty("both sides", tolerance_pct=1.5, bench=BenchEvidence(0.0, 0.8))
    assert "claims" not in trust_words(tried, "phone")


def test_a_reading_without_any_error_names_no_cause() -> None:
    sure = reading_uncertainty("both sides", tolerance_pct=0.0, temperature_pct=0.0)
    assert trust_words(sure, "phone").startswith("The power that phone shows stays within 0.0 % of the truth")
    assert "Most of that" not in trust_words(sure, "phone")
