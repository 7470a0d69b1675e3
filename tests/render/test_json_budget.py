import pytest

from spindlewise.reception.doubled_side import doubled_error
from spindlewise.reception.uncertainty import reading_uncertainty
from spindlewise.render.json_budget import budget_json


def test_the_causes_make_up_the_figure() -> None:
    doubled = doubled_error((0.47, 0.49), "left")
    found = budget_json(
        reading_uncertainty("one side doubled", tolerance_pct=1.5, doubled=doubled, temperature_pct=1.0),
        "phone",
    )
    causes = found["contributions"]
    assert isinstance(causes, list)
    bias = sum(cause["bias_pct"] for cause in causes)  # type: ignore[index,call-overload,misc]
    variance = sum(cause["standard_pct"] ** 2 for cause in causes)  # type: ignore[index,call-overload,misc]
    assert found["bias_pct"] == pytest.approx(bias) == pytest.approx(-4.0)
    assert found["expanded_pct"] == pytest.approx(abs(bias) + 2 * variance**0.5, abs=1e-5)
    assert (found["receiver"], found["largest"], found["coverage_factor"]) == ("phone", "doubled side", 2.0)
    assert (found["left_out"], found["not_measured"]) == ([], [])


def test_without_a_figure_it_is_null_and_says_what_is_missing() -> None:
    found = budget_json(reading_uncertainty("both sides", tolerance_pct=None), "phone")
    assert found["expanded_pct"] is found["combined_pct"] is found["largest"] is None
    assert found["missing"] == ["claimed tolerance"]
