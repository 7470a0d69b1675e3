"""What moves on the bike when pedals are swapped."""

from datetime import date

import pytest

import worlds
from spindlewise.answer.swap import same_cleat, swap
from spindlewise.fit.missing import MissingFigures

GENERAL = ("Small steps.",)


def moved(old, new, **buyer):
    return swap(old, new, worlds.DAY, worlds.buyer(**buyer) if buyer else None, GENERAL)


def of(name, stack_mm, **changes):
    return worlds.product(name, {"stack_mm": (worlds.stack(stack_mm),)}, **changes)


def test_4_mm_more_stack_and_cranks_from_172_5_to_170_raise_the_saddle_6_5_mm():
    """Common practice, no source."""
    found = moved(of("low", 10.0), of("tall", 14.0), bike={"crank_mm": 172.5, "new_crank_mm": 170.0})

    assert found.saddle.change_mm == 6.5
    assert found.plan.steps_mm == (2.5, 2.0, 2.0)


def test_4_mm_less_stack_and_cranks_from_170_to_175_lower_the_saddle_9_mm():
    """Common practice, no source."""
    found = moved(of("tall", 14.0), of("low", 10.0), bike={"crank_mm": 170.0, "new_crank_mm": 175.0})

    assert found.saddle.change_mm == -9.0


def test_without_a_buyer_cranks_and_soles_stay():
    found = moved(of("low", 10.0), of("tall", 14.0))

    assert found.saddle.change_mm == 4.0
    assert found.travel is None
    assert found.leg.because == "it needs a buyer file with body and bike"


def test_a_new_crank_of_which_the_old_one_is_unknown_names_it():
    found = moved(of("low", 10.0), of("tall", 14.0), bike={"new_crank_mm": 170.0})

    assert isinstance(found.saddle, MissingFigures)
    assert [(m.product, m.figure) for m in found.saddle.missing] == [("low", "crank")]
    assert found.plan is None
    assert found.leg.because == "it needs the figures that common practice lacks too"


def test_another_sole_counts():
    shoes = {"sole_mm": 10.0, "new_sole_mm": 8.0}

    assert moved(of("low", 10.0), of("tall", 14.0), shoes=shoes).saddle.change_mm == 2.0


def test_unlike_stack_bases_are_converted_with_a_known_cleat_or_refused():
    to_sole = {"stack_mm": (worlds.stack(17.5, "axis to sole"),)}
    known = worlds.product("known", to_sole)
    other = {"bolts": "three-bolt", "pattern": "Reef", "height_mm": "unknown"}
    bare = of("bare", 10.0, cleat=other)

    converted = moved(of("low", 10.0), known).saddle
    assert (converted.change_mm, converted.basis) == (2.0, "axis to sole")
    refused = moved(bare, known).saddle
    assert isinstance(refused, MissingFigures)
    assert refused.missing[0].product == "bare"


def test_a_pedal_with_both_bases_is_compared_on_the_one_that_the_other_has():
    both = worlds.product("both", {"stack_mm": (worlds.stack(11.0), worlds.stack(16.0, "axis to sole"))})
    sole = worlds.product("sole", {"stack_mm": (worlds.stack(18.0, "axis to sole"),)})

    assert moved(both, sole).saddle.change_mm == 2.0


def test_no_stack_at_all_is_named():
    found = moved(of("low", 10.0), worlds.product("bare", {"stack_mm": "unknown"})).saddle

    assert [(m.product, m.figure) for m in found.missing] == [("bare", "stack")]


def test_stance_counts_both_sides_and_washers_with_their_caution():
    wide = worlds.product(
        "wide", {"pedal_offset_mm": (worlds.seen(55.5, {"span": "crank face to pedal centre"}),)}
    )
    found = moved(worlds.product("slim"), wide, bike={"new_washers_each_side_mm": 1.0})

    assert found.stance.width_mm == found.stance.pedals.width_mm == 5.0
    assert [w.foot for w in found.stance.washers] == ["left", "right"]


def test_an_unknown_offset_leaves_the_stance_unknown():
    found = moved(worlds.product("slim"), worlds.product("bare", {"pedal_offset_mm": "unknown"})).stance

    assert isinstance(found.pedals, MissingFigures)
    assert found.width_mm is None


def test_weight_changes_with_its_interval_or_names_what_is_missing():
    light = worlds.product("light", {"weight_g": (worlds.weighed(300.0, 2.0),)})
    found = moved(worlds.product("heavy"), light)

    assert (found.weight.expected_g, found.weight.low_g, found.weight.high_g) == (-30.0, -33.0, -27.0)
    bare = moved(worlds.product("heavy"), worlds.product("bare", {"weight_g": "unknown"}))
    assert bare.weight is None
    assert bare.weight_missing == "weight of Bare: nobody has stated it"


def test_tools_and_torque_come_from_the_maker_and_unknown_stays_unknown():
    bare = worlds.product("bare", {"fitting_torque_nm": "unknown"}, tools={"fitting": "unknown"})

    assert moved(bare, worlds.product("heron")).off_tools == ()
    assert moved(bare, worlds.product("heron")).on_tools == ("hex key 8 mm",)
    assert moved(worlds.product("heron"), bare).on_tools == ()
    assert moved(worlds.product("heron"), bare).torque.kind == "unknown"


def test_cautions_grow_with_what_can_hurt():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "The axle may crack.",
        "action": "Stop riding.",
        "issued_by": "the maker",
    }
    reef = {"bolts": "three-bolt", "pattern": "Reef", "height_mm": 5.5}
    risky = of("risky", 30.0, cleat=reef, safety_notices=(notice,))
    found = moved(of("low", 10.0), risky).cautions

    assert found[-1] == "Small steps."
    assert [c.split(":")[0].split(" of ")[0] for c in found[:-1]] == [
        "Safety notice",
        "This is a large change",
        "Move the saddle in the small steps shown, with rides in between; see a qualified fitter.",
        "The cleats change too",
    ]


def test_cleats_stay_only_where_drilling_pattern_and_height_agree():
    reef = {"bolts": "three-bolt", "pattern": "Reef", "height_mm": 5.5}

    assert same_cleat(worlds.product("heron"), worlds.product("siskin"))
    assert not same_cleat(worlds.product("heron"), worlds.product("siskin", cleat=reef))
    assert same_cleat(worlds.product("heron", cleat=reef), worlds.product("heron", cleat=reef))


def test_travel_is_split_by_the_seat_tube():
    found = moved(of("low", 10.0), of("tall", 14.0), bike={"seat_tube_deg": 73.0}).travel

    assert found.along_tube_mm == 4.0
    assert found.up_mm == pytest.approx(3.825, abs=1e-3)
