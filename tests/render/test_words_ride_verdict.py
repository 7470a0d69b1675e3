"""Verdicts in sentences that a viewer understands, with their numbers."""

import pytest

from small_rides import demo, report
from spindlewise.bench.synthetic_ride import Meter, Stretch
from spindlewise.render.words_ride_verdict import verdict_sentences

TWO_LEVELS = [Stretch(300, 120), Stretch(300, 300)] * 2


def of(first: Meter, second: Meter, **more):
    return verdict_sentences(report(first, second, **more).pairs[0])


def test_agreement_with_its_denominator_interval_and_limits() -> None:
    pair = next(pair for pair in demo().pairs if (pair.first, pair.second) == ("pedals", "spider"))
    agreement, quality, plausibility = verdict_sentences(pair)
    assert agreement.startswith(
        "pedals and spider, agreement: agree. pedals reads 0.9 W more on average, +0.4 % of spider"
    )
    assert "within the ±1.7 % that both tolerances allow together" in agreement
    assert agreement.endswith("Neither is thereby right or wrong.")
    assert quality.startswith("Data quality of these two: usable.")
    assert "Not noted: the firmware (spider)." in quality
    assert plausibility == "Plausibility: cannot tell. No loss is judged: no chain stands between them."


def test_of_many_things_that_nobody_noted_the_number_is_said() -> None:
    hub = next(pair for pair in demo().pairs if (pair.first, pair.second) == ("hub", "spider"))
    assert "Not noted: 5 things about these two, named below." in verdict_sentences(hub)[1]


def test_a_difference_across_the_chain_is_expected() -> None:
    pair = next(pair for pair in demo().pairs if pair.chain)
    agreement, _, plausibility = verdict_sentences(pair)
    assert "a chain stands between them, so a difference is expected" in agreement
    assert "of the mean of both" in agreement
    assert plausibility.startswith("Plausibility: plausible. Behind the chain 2.3 % less arrives")
    assert "the two fit, E_n -0.15, within -1 to 1" in plausibility


def test_less_and_outside() -> None:
    agreement, _, _ = of(Meter("pedals", scale=0.93), Meter("spider"))
    assert "agreement: differ. pedals reads" in agreement
    assert "W less on average" in agreement
    assert "that is outside the ±1.4 %" in agreement


def test_what_averages_out_is_told_at_both_ends() -> None:
    agreement, _, _ = of(Meter("pedals", scale=0.9, offset_w=21.0), Meter("spider"), plan=TWO_LEVELS)
    assert "depends on power" in agreement
    assert "the average hides it" in agreement


def test_without_a_tolerance_nothing_says_how_much_may_be() -> None:
    agreement, _, plausibility = of(
        Meter("pedals"), Meter("hub"), facts={"hub": {"tolerance_pct": "unknown"}}
    )
    assert "no tolerance is stated for one of them" in agreement
    assert "No loss is judged: the tolerance of hub is not stated." in plausibility


def test_an_implausible_loss_and_tolerances_too_wide() -> None:
    assert "outside -1 to 1" in of(Meter("pedals"), Meter("hub", loss_pct=12.0))[2]
    wide = {"pedals": {"tolerance_pct": 2.0}, "hub": {"tolerance_pct": 2.0}}
    told = of(Meter("pedals"), Meter("hub", loss_pct=2.5), facts=wide)[2]
    assert "no loss at all would have passed too" in told


def test_equal_averages_across_a_chain_are_a_finding() -> None:
    told = of(Meter("pedals"), Meter("hub", scale=1 / 0.975, loss_pct=2.5))[2]
    assert told.endswith("Equal averages with a chain between them are a finding, not a proof.")


def test_too_few_seconds_are_said_three_times() -> None:
    for sentence in of(Meter("pedals"), Meter("spider"), plan=[Stretch(15, 200)]):
        assert "cannot tell" in sentence or "not enough" in sentence


@pytest.mark.parametrize("state", ["void", "bedding-in"])
def test_a_void_ride_is_the_first_reason_of_its_quality(state: str) -> None:
    standing = {"state": state, "because": "a loose cleat"}
    assert "not enough" in of(Meter("pedals"), Meter("spider"), standing=standing)[1]
