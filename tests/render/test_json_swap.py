from typing import Any

import worlds
from small_answers import reply
from spindlewise.answer.swap import swap
from spindlewise.answer.swap_asked import swap_asked
from spindlewise.render.json_swap import swap_asked_json, swap_json


def test_the_parts_add_up_to_the_change() -> None:
    found = reply().swap
    assert found is not None
    saddle = swap_json(found)["saddle_mm"]
    assert isinstance(saddle, dict)
    assert round(sum(saddle["parts"].values()), 6) == saddle["practice"]  # type: ignore[union-attr,arg-type]
    assert saddle["leg_model"] is None
    assert saddle["leg_model_missing"]


def test_both_views_and_their_difference() -> None:
    buyer = worlds.buyer(
        bike={"crank_mm": 172.5, "saddle_height_mm": 745.0, "seat_tube_deg": 73.5}, body={"height_mm": 1800.0}
    )
    new = worlds.product("new", {"stack_mm": (worlds.stack(17.0),)})
    saddle = swap_json(swap(worlds.plain("old"), new, worlds.DAY, buyer, ()))["saddle_mm"]
    assert isinstance(saddle, dict)
    apart = saddle["practice_less_leg_model"]
    assert abs(saddle["practice"] - saddle["leg_model"] - apart) < 1e-5  # type: ignore[operator]
    assert saddle["leg_model_missing"] is None
    assert len(saddle["steps"]) == 3  # type: ignore[arg-type]


def test_what_is_missing_is_null_and_listed() -> None:
    new = worlds.product(
        "new",
        {
            "stack_mm": "unknown",
            "weight_g": "unknown",
            "pedal_offset_mm": "unknown",
            "fitting_torque_nm": "unknown",
        },
    )
    found = swap_json(swap(worlds.plain("old"), new, worlds.DAY, None, ()))
    assert found["saddle_mm"] is found["stance_mm"] is found["weight_g"] is None
    assert found["fitting_torque_nm"] == {"value": None, "grade": "unknown"}
    figures = {lack["figure"] for lack in found["missing"]}  # type: ignore[union-attr,index,call-overload]
    assert figures == {"stack", "left offset", "right offset", "weight"}


def test_leg_stance_crank_and_climb_come_with_all_their_parts() -> None:
    buyer = worlds.buyer(
        bike={
            "crank_mm": 172.5,
            "new_crank_mm": 170.0,
            "saddle_height_mm": 745.0,
            "seat_tube_deg": 73.5,
            "bike_mass_kg": 8.0,
            "q_factor_mm": 148.0,
            "new_q_factor_mm": 146.0,
            "new_washers_each_side_mm": {"left": 0.0, "right": 1.27},
        },
        body={"height_mm": 1800.0},
        needs={"rider_mass_kg": 72.0},
        riding={
            "threshold_power_w": 250.0,
            "climb": {"length_m": 10_000.0, "gradient_pct": 8.0, "power_w": 250.0},
        },
    )
    new = worlds.product("new", {"stack_mm": (worlds.stack(17.0),)})
    found: Any = swap_asked_json(swap_asked(worlds.plain("old"), new, worlds.DAY, buyer, ()))
    leg, stance = found["leg"], found["stance_mm"]
    effects = [abs(each["effect_mm"]) for each in leg["inputs"]]
    assert effects == sorted(effects, reverse=True)
    assert len(effects) == 10
    assert leg["knee_straightest_deg"]["saddle_left"] > leg["knee_straightest_deg"]["before"]
    assert leg["knee_straightest_deg"]["saddle_moved"] == leg["knee_straightest_deg"]["before"]
    assert leg["knee_most_bent_deg"]["saddle_moved"] < leg["knee_most_bent_deg"]["before"]
    assert leg["shortest_reach_change_mm"] > 0
    assert found["saddle_mm"]["drop_to_bars"] == found["saddle_mm"]["up"] > found["saddle_mm"]["back"] > 0
    assert found["saddle_mm"]["along_tube"] == found["saddle_mm"]["practice"]
    assert stance["q_factor"] == -2.0
    assert stance["width_with_q_factor"] == stance["width"] - 2.0
    assert stance["washers"] == [{"side": "right", "washers_mm": 1.27, "thread_turns_lost": 1.0}]
    assert found["crank_setting"]["error_pct"] > 0
    assert found["climb"]["change_s"] > 0


def test_without_a_climb_the_seconds_say_what_they_need() -> None:
    found = swap_asked_json(swap_asked(worlds.plain("old"), worlds.product("new"), worlds.DAY, None, ()))
    assert found["climb"] == {"because": "needs a climb"}
    assert found["crank_setting"] is found["leg"] is None
