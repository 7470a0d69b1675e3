from typing import Any

import pytest
from pydantic import ValidationError

from small_catalog import GOOD
from spindlewise.catalog.criteria import Criteria, CurveCriterion, Curves, Knot, Span, StepsCriterion
from spindlewise.catalog.reading import read_record

CURVE: dict[str, Any] = {
    "title": "Weight",
    "what": "The pair.",
    "unit": "g",
    "knots": ({"at": 280.0, "merit": 1.0}, {"at": 450.0, "merit": 0.0}),
    "plausible": {"low": 290.0, "high": 430.0},
    "source": "The editors.",
}


def test_the_file_has_each_criterion_once() -> None:
    criteria, _, problems = read_record(Criteria, GOOD / "criteria.yaml")
    assert problems == []
    assert criteria is not None
    assert criteria.currency == "EUR"
    assert set(Curves.model_fields) == set(criteria.criteria.model_dump())


@pytest.mark.parametrize("places", [(2.0, 1.0), (1.0, 1.0), (1.0, 2.0, 2.0), (1.0,), ()])
def test_knots_stand_in_rising_order_two_at_least(places: tuple[float, ...]) -> None:
    assert CurveCriterion.model_validate(CURVE)
    with pytest.raises(ValidationError):
        CurveCriterion.model_validate({**CURVE, "knots": tuple({"at": at, "merit": 0.5} for at in places)})


@pytest.mark.parametrize("merit", [-0.01, 1.01, float("nan"), True])
def test_a_merit_lies_between_0_and_1(merit: float) -> None:
    with pytest.raises(ValidationError):
        Knot(at=1.0, merit=merit)
    with pytest.raises(ValidationError):
        StepsCriterion(title="t", what="w", steps={"nothing": merit}, source="s")


def test_a_span_has_a_low_end_and_a_high_one() -> None:
    assert Span(low=1.0, high=1.0)
    with pytest.raises(ValidationError, match=r"low stands above high \| exchange them"):
        Span(low=2.0, high=1.0)
