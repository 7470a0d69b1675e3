"""Needs as a filter: every failure named, safety failing on unknown."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.needs import sift
from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.reception.reading_mode import Reception

GOOD = Reception(
    "head unit", "both sides", "ANT+", None, "", 1, "arrives", "arrives", (), "both sides", "both sides"
)
PRICED = Paid(Decimal("500.00"), "EUR", worlds.price("heron", 500), (), 10)


def failures(product, reception=GOOD, paid=PRICED, budget="none", **needs):
    buyer = worlds.buyer(needs=needs, budget=budget)
    return [f.because for f in sift(product, buyer, worlds.DAY, paid, reception).failures]


def unchecked(product, reception=GOOD, **needs):
    return sift(product, worlds.buyer(needs=needs), worlds.DAY, PRICED, reception).unchecked


def test_a_product_without_needs_against_it_passes():
    assert failures(worlds.product("heron")) == []


def test_over_budget_says_by_how_much():
    assert failures(worlds.product("heron"), budget=Decimal("450.00")) == [
        "it costs EUR 500.00, EUR 50.00 over the budget"
    ]
    assert failures(worlds.product("heron"), budget=Decimal("500.00")) == []


def test_no_price_is_out_with_the_reason():
    assert failures(worlds.product("heron"), paid=Unpriced("no price in force in EU")) == [
        "no price in force in EU"
    ]


@pytest.mark.parametrize(
    ("limit", "because"),
    [
        (80.0, ["the maker's rider limit is 80 kg, below 92 kg"]),
        (92.0, []),
        ("none", []),
        ("unknown", ["rider weight limit unknown (invented maker does not say)"]),
    ],
)
def test_rider_weight_is_a_safety_need(limit, because):
    said = worlds.seen(limit, grade="claimed", source="invented maker")
    heron = worlds.product("heron", {"rider_limit_kg": (said,)})

    assert failures(heron, rider_mass_kg=92.0) == because


def test_a_limit_that_nobody_stated_fails_too_and_is_marked_as_safety():
    heron = worlds.product("heron", {"rider_limit_kg": "unknown"})
    found = sift(heron, worlds.buyer(needs={"rider_mass_kg": 70.0}), worlds.DAY, PRICED, GOOD)

    assert [f.safety for f in found.failures] == [True]


@pytest.mark.parametrize(
    ("bolts", "because"),
    [
        ("three-bolt", []),
        ("two-bolt", ["its two-bolt cleat does not fit three-bolt shoes"]),
        ("none", ["it takes no cleat, and the shoes are three-bolt"]),
        ("unknown", ["cleat drilling unknown"]),
    ],
)
def test_cleats_must_fit_the_shoes(bolts, because):
    heron = worlds.product("heron", cleat={"bolts": bolts, "pattern": "Keel", "height_mm": "unknown"})

    assert failures(heron, shoes={"bolts": "three-bolt"}) == because


def test_a_cleat_pattern_may_be_asked_for():
    assert failures(worlds.product("heron"), shoes={"bolts": "three-bolt", "patterns": ("Reef",)}) == [
        "its cleat pattern is Keel"
    ]
    assert failures(worlds.product("heron"), shoes={"bolts": "three-bolt", "patterns": ("Keel",)}) == []


def test_kind_and_state_of_the_range():
    gull = worlds.plain("gull")
    late = worlds.product(
        "late", statuses=({"state": "current", "since": date(2027, 1, 1), "source": "maker"},)
    )
    gone = worlds.product(
        "gone", statuses=({"state": "discontinued", "since": date(2025, 1, 1), "source": "maker"},)
    )

    assert failures(gull) == ["it is a plain pedal"]
    assert failures(gull, kind="any") == []
    assert failures(late) == ["it was not yet sold on 2026-11-20"]
    assert failures(gone) == []
    assert failures(gone, states=("current",)) == ["it is discontinued"]
    assert failures(worlds.product("heron"), states=("current",)) == []


def test_what_the_receiver_shows_can_be_a_need():
    doubled = replace(GOOD, mode="one side doubled", balance="does not arrive")
    unsure = replace(GOOD, mode="unknown", balance="unknown")
    heron = worlds.product("heron")
    needs = {"reading": "both sides", "balance": "needed"}

    assert failures(heron, doubled, **needs) == [
        "head unit shows one side doubled",
        "balance does not arrive at head unit",
    ]
    assert failures(heron, unsure, **needs) == []
    assert unchecked(heron, unsure, **needs) == (
        "both sides on head unit: unknown",
        "balance on head unit: unknown",
    )
    assert failures(heron, GOOD, **needs) == []


@pytest.mark.parametrize(
    ("code", "because", "open_question"),
    [
        ("IPX6", [], ()),
        ("IPX7", ["IPX7 does not satisfy IPX6"], ()),
        ("IPX6/IPX7", [], ()),
        ("IP6X", [], ("IPX6: IP6X does not say",)),
        ("none", ["ingress code: none"], ()),
        ("unknown", [], ("IPX6: ingress code unknown",)),
    ],
)
def test_water_follows_the_ingress_standard(code, because, open_question):
    heron = worlds.product("heron", {"ingress": (worlds.seen(code, grade="claimed"),)})

    assert failures(heron, water="IPX6") == because
    assert unchecked(heron, water="IPX6") == open_question


def test_bounds_on_figures_name_value_grade_and_bound():
    heron = worlds.product("heron")
    silent = worlds.product("silent", {"running_hours": "unknown", "warranty_years": "not applicable"})
    bare = worlds.product("bare", {"warranty_years": (worlds.seen("none", grade="claimed"),)})

    assert failures(heron, weight_g_at_most=320.0) == ["weight 330 g (measured), at most 320 g asked"]
    assert failures(heron, weight_g_at_most=330.0, running_hours_at_least=60.0) == []
    assert failures(heron, warranty_years_at_least=3.0) == [
        "warranty 2 years (claimed), at least 3 years asked"
    ]
    assert failures(bare, warranty_years_at_least=1.0) == ["warranty: none"]
    assert failures(silent, running_hours_at_least=10.0, warranty_years_at_least=1.0) == []
    assert unchecked(silent, running_hours_at_least=10.0) == ("running time at least 10 h: unknown",)
