from spindlewise.reception.doubled_side import doubled_error
from spindlewise.render.words_doubled import doubled_words


def test_a_doubled_side_in_percent_and_watts_and_its_drift() -> None:
    assert doubled_words(doubled_error((0.47, 0.49), "left", 250), "phone") == (
        "Doubling one leg reads low there: -6.0 % to -2.0 % at your own balance, "
        "which is -15 W to -5 W at your threshold power (phone). A drift of your balance over that range "
        "moves the reading by 4.0 % or 10 W at the same true power."
    )


def test_one_balance_drifts_nowhere_and_without_threshold_there_are_no_watts() -> None:
    single = doubled_words(doubled_error((0.47, 0.47), "left", 250), "phone")
    assert single.endswith("-6.0 % at your own balance, which is -15 W at your threshold power (phone).")
    bare = doubled_words(doubled_error((0.48, 0.52), "left"), "phone")
    assert bare == (
        "Doubling one leg reads low or high there: -4.0 % to +4.0 % at your own balance (phone). "
        "A drift of your balance over that range moves the reading by 8.0 % at the same true power."
    )
    even = doubled_words(doubled_error((0.5, 0.5), "left"), "phone")
    assert even == "Doubling one leg reads true at an even balance there: 0.0 % at your own balance (phone)."


def test_a_populations_range_is_marked_as_one_with_its_source() -> None:
    text = doubled_words(doubled_error(None, "left", 250), "phone")
    assert "for 19 riders of 20, since your balance is unknown (a population's figure" in text
    assert "Osmani 2022; it is not yours)" in text
    assert "drift" not in text
