from datetime import date

import pytest

import worlds
from spindlewise.catalog.observation import ATTRIBUTE_UNITS, Observation
from spindlewise.site.observation_rows import TITLES, attributes, value_words


def rows(product, key):
    return next(a.rows for a in attributes(product, worlds.DAY) if a.key == key)


def test_every_attribute_of_the_catalog_is_shown():
    assert list(TITLES) == list(ATTRIBUTE_UNITS)


def test_best_grade_first_then_the_newest_and_nothing_later():
    product = worlds.product(
        "heron",
        {
            "weight_g": (
                worlds.weighed(312, "unknown", grade="claimed"),
                worlds.weighed(316),
                worlds.weighed(317, date=date(2026, 3, 1)),
                worlds.weighed(400, date=date(2027, 1, 1)),
            )
        },
    )
    assert [row.value for row in rows(product, "weight_g")] == ["317 g", "316 g", "312 g"]
    assert [row.spread for row in rows(product, "weight_g")] == ["± 1 g", "± 1 g", "not stated"]
    assert rows(product, "weight_g")[0].basis == "pair, batteries in, cleats off"


@pytest.mark.parametrize("word", ["unknown", "not applicable"])
def test_no_observation_is_said_in_words(word):
    (row,) = rows(worlds.product("heron", {"running_hours": word}), "running_hours")
    assert (row.value, row.date) == (word, "")


def test_only_later_observations_are_unknown_on_the_day():
    product = worlds.product("heron", {"weight_g": (worlds.weighed(316, date=date(2027, 1, 1)),)})
    (row,) = rows(product, "weight_g")
    assert row.value == "unknown"


def test_codes_words_and_signs():
    product = worlds.product(
        "heron",
        {
            "rider_limit_kg": (worlds.seen("none", grade="claimed"),),
            "reading_bias_pct": (worlds.seen(-0.4, plus_minus=0.2),),
        },
    )
    assert rows(product, "ingress")[0].value == "IPX7"
    assert rows(product, "rider_limit_kg")[0].value == "none"
    assert rows(product, "reading_bias_pct")[0].value == "−0.4 %"


def test_what_has_no_value_is_refused():
    bare = Observation.model_validate({"grade": "measured", "date": date(2026, 1, 1), "source": "x"})
    with pytest.raises(TypeError, match="has no value"):
        value_words(bare, "g")
