from small_answers import reply
from spindlewise.render.json_ladder import ladder_json


def test_the_baseline_is_the_first_step_and_prices_per_gram_are_positive_or_null() -> None:
    climb = reply().climb
    assert climb is not None
    found = ladder_json(climb)
    steps = found["steps"]
    assert isinstance(steps, list)
    assert steps[0]["product"] == found["baseline"] == "lommerside-lethery"  # type: ignore[index,call-overload]
    for step in steps:
        for key in ("cost_per_gram", "saved_per_gram", "step_cost_per_gram"):
            assert step[key] is None or float(step[key]) > 0  # type: ignore[index,call-overload,arg-type]
        assert isinstance(step["extra_cost"], str)  # type: ignore[index,call-overload]
