from datetime import date
from typing import Any

import pytest

from spindlewise.catalog.figure import (
    Absent,
    Known,
    KnownCode,
    basis_words,
    figure,
    ingress,
    pedal_offset_mm,
    stack_mm,
    weight_g,
)
from spindlewise.catalog.figure import seen as seen_by
from spindlewise.catalog.observation import Observation
from spindlewise.catalog.product import Product
from worlds import plain, product, seen, stack, weighed

DAY, BEFORE, LONG_BEFORE = date(2026, 11, 20), date(2026, 6, 1), date(2025, 6, 1)


def _with(attribute: str, *entries: Any) -> Product:
    return product("moor-peak", {attribute: entries if entries else "unknown"})


def _value(found: Known | KnownCode | Absent) -> object:
    return found.kind if isinstance(found, Absent) else found.value


def test_the_bench_goes_before_others_and_they_before_the_maker_whatever_the_dates() -> None:
    made = _with(
        "warranty_years",
        seen(1.0, grade="claimed", date=DAY),
        seen(2.0, grade="reported", date=BEFORE),
        seen(3.0, grade="measured", date=LONG_BEFORE),
    )
    assert _value(figure(made, "warranty_years", DAY)) == 3.0
    assert _value(figure(made, "warranty_years", DAY, grade="reported")) == 2.0
    assert _value(figure(made, "warranty_years", DAY, grade="claimed")) == 1.0


def test_within_a_grade_the_newest_counts_and_of_one_day_the_later_listed() -> None:
    made = _with("warranty_years", seen(1.0, date=DAY), seen(2.0, date=DAY), seen(3.0, date=BEFORE))
    assert [o.value for o in seen_by(made.observations.warranty_years, DAY)] == [2.0, 1.0, 3.0]  # type: ignore[union-attr]
    assert _value(figure(made, "warranty_years", DAY)) == 2.0
    assert _value(figure(made, "warranty_years", BEFORE)) == 3.0


def test_nothing_dated_later_is_seen() -> None:
    assert seen_by("unknown", DAY) == []
    made = _with("warranty_years", seen(2.0, date=DAY))
    found = figure(made, "warranty_years", BEFORE)
    assert found == Absent("unknown", "nothing observed by 2026-06-01")
    assert figure(made, "warranty_years", DAY, grade="claimed") == Absent(
        "unknown", "nothing claimed by 2026-11-20"
    )


def test_a_figure_can_be_followed_to_its_observation() -> None:
    found = weight_g(_with("weight_g", weighed(346.0, 2.0, source="bench/weighings.csv")), DAY)
    assert isinstance(found, Known)
    assert (found.grade, found.source, found.date) == ("measured", "bench/weighings.csv", date(2026, 1, 10))
    assert (found.low, found.value, found.high) == (344.0, 346.0, 348.0)
    assert found.basis == "pair, batteries in, cleats off"


def test_without_a_plus_minus_both_ends_are_the_value() -> None:
    found = weight_g(_with("weight_g", weighed(346.0, "unknown")), DAY)
    assert isinstance(found, Known)
    assert (found.plus_minus, found.low, found.high) == (None, 346.0, 346.0)


@pytest.mark.parametrize("word", ["unknown", "not applicable"])
def test_a_word_in_place_of_a_list_says_why_there_is_no_figure(word: str) -> None:
    made = product("moor-peak", {"service_hours": word, "ingress": word})
    because = "nobody has stated it" if word == "unknown" else "does not apply"
    assert figure(made, "service_hours", DAY) == ingress(made, DAY) == Absent(word, because)  # type: ignore[arg-type]


def test_none_by_design_is_an_answer_and_unknown_is_passed_over() -> None:
    said = _with("rider_limit_kg", seen("none", grade="claimed", source="sheet"))
    assert figure(said, "rider_limit_kg", DAY) == Absent("none", "sheet, 2026-01-10")
    older = _with("rider_limit_kg", seen("unknown", date=DAY), seen(110.0, date=BEFORE))
    assert _value(figure(older, "rider_limit_kg", DAY)) == 110.0
    nobody = _with("rider_limit_kg", seen("unknown", source="the maker"))
    assert figure(nobody, "rider_limit_kg", DAY) == Absent("unknown", "the maker does not say")


def test_a_code_is_no_figure() -> None:
    with pytest.raises(ValueError, match=r"ingress is a code, not a number: ask ingress\(\) for it"):
        figure(product("moor-peak"), "ingress", DAY)


@pytest.mark.parametrize(
    "basis",
    [
        {"count": "one pedal", "batteries": "in", "cleats": "off"},
        {"count": "pair", "batteries": "out", "cleats": "off"},
        {"count": "pair", "batteries": "in", "cleats": "on"},
        {"count": "unknown", "batteries": "unknown", "cleats": "unknown"},
        {"count": "pair", "batteries": "not applicable", "cleats": "off"},
    ],
)
def test_a_weight_on_another_basis_decides_nothing(basis: dict[str, str]) -> None:
    found = weight_g(_with("weight_g", seen(300.0, basis)), DAY)
    assert isinstance(found, Absent)
    assert found.kind == "unknown"
    assert found.because.startswith("only on another basis (")
    assert found.because.endswith("); wanted: pair, batteries in, cleats off")


def test_a_worse_grade_on_the_right_basis_goes_before_a_better_one_on_the_wrong() -> None:
    on = {"count": "pair", "batteries": "in", "cleats": "on"}
    made = _with("weight_g", seen(400.0, on), weighed(340.0, grade="claimed"))
    assert _value(weight_g(made, DAY)) == 340.0
    assert weight_g(made, DAY, "reported") == Absent("unknown", "nothing reported by 2026-11-20")
    assert _value(weight_g(made, DAY, "claimed")) == 340.0
    assert _value(weight_g(made, DAY, "measured")) == "unknown"


def test_a_plain_pedal_is_weighed_without_batteries() -> None:
    assert _value(weight_g(plain("moor-flat", 312.0), DAY)) == 312.0
    made = plain("moor-flat", observations={"weight_g": (weighed(312.0),)})
    found = weight_g(made, DAY)
    assert isinstance(found, Absent)
    assert found.because.endswith("wanted: pair, no batteries, cleats off")


def test_a_stack_counts_on_its_own_span_only() -> None:
    made = _with("stack_mm", stack(16.0, "axis to sole"), stack(9.0, "unknown"))
    assert _value(stack_mm(made, DAY, "axis to sole")) == 16.0
    assert stack_mm(made, DAY, "axis to pedal top") == Absent(
        "unknown", "only on another basis (basis not stated); wanted: axis to pedal top"
    )


def test_an_offset_to_the_cleat_is_not_one_to_the_pedal() -> None:
    assert _value(pedal_offset_mm(product("moor-peak"), DAY)) == 54.0
    made = _with("pedal_offset_mm", seen(50.0, {"span": "crank face to cleat centre"}))
    assert _value(pedal_offset_mm(made, DAY)) == "unknown"


def test_an_ingress_code_in_force() -> None:
    made = _with("ingress", seen("unknown", date=DAY), seen("IPX5", date=BEFORE))
    assert ingress(made, DAY) == KnownCode("IPX5", "measured", BEFORE, "bench/weighings.csv")
    assert _value(ingress(_with("ingress", seen("none", date=DAY)), DAY)) == "none"
    assert ingress(_with("ingress", seen("unknown")), DAY) == Absent("unknown", "nobody has stated it")
    assert _value(ingress(made, LONG_BEFORE)) == "unknown"


@pytest.mark.parametrize(
    ("attribute", "entry", "words"),
    [
        ("weight_g", weighed(1.0), "pair, batteries in, cleats off"),
        (
            "weight_g",
            seen(1.0, {"count": "one pedal", "batteries": "not applicable", "cleats": "unknown"}),
            "one pedal, no batteries, cleats not stated",
        ),
        ("stack_mm", stack(1.0), "axis to pedal top"),
        ("pedal_offset_mm", seen(1.0, {"span": "unknown"}), "basis not stated"),
        ("tolerance_pct", seen(1.0, {"of": "each side"}), "of each side"),
        ("tolerance_pct", seen(1.0, {"of": "unknown"}), "basis not stated"),
        ("running_hours", seen(1.0, {"cells": "two AAA"}), "two AAA"),
        ("warranty_years", seen(1.0), ""),
    ],
)
def test_a_basis_in_words(attribute: str, entry: dict[str, Any], words: str) -> None:
    observation: Observation = getattr(_with(attribute, entry).observations, attribute)[0]
    assert basis_words(observation) == words
