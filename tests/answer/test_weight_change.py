"""Heavier or lighter, with its interval."""

import worlds
from spindlewise.answer.weight_change import weight_change


def of(name, weight):
    return worlds.product(name, {"weight_g": weight})


def test_the_interval_runs_from_the_lightest_new_to_the_heaviest_old():
    found, missing = weight_change(
        of("old", (worlds.weighed(330.0),)), of("new", (worlds.weighed(300.0, 2.0),)), worlds.DAY
    )

    assert (found.low_g, found.expected_g, found.high_g) == (-33.0, -30.0, -27.0)
    assert (found.old.value, found.new.value, missing) == (330.0, 300.0, "")


def test_both_that_are_missing_are_named():
    found, missing = weight_change(of("old", "unknown"), of("new", "unknown"), worlds.DAY)

    assert found is None
    assert missing == "weight of Old: nobody has stated it; weight of New: nobody has stated it"
