import worlds
from small_answers import reply
from spindlewise.answer.swap import swap
from spindlewise.render.json_swap import swap_json


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
