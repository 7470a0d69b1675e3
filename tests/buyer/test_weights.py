from typing import Any

import pytest
from pydantic import ValidationError

from spindlewise.buyer.weights import CRITERIA, Pair, Weights
from spindlewise.catalog.criteria import Curves


def test_every_criterion_of_the_curves_can_be_weighed_in_their_order() -> None:
    assert tuple(Curves.model_fields) == CRITERIA


@pytest.mark.parametrize(
    ("stated", "named"),
    [
        ({"points": {"price": 40.0, "weight": 0.0}}, {"price"}),
        ({"order": ("stack", "detail")}, {"stack", "detail"}),
        ({"pairs": ({"more": "price", "than": "weight", "times": 2.0},)}, {"price", "weight"}),
        ({"points": {"price": 1.0, "ownership": 0.0}}, {"price"}),
    ],
)
def test_what_is_named_counts(stated: dict[str, Any], named: set[str]) -> None:
    assert Weights.model_validate(stated).named() == named


@pytest.mark.parametrize(
    ("stated", "told"),
    [
        ({}, "are stated by none of them"),
        ({"points": {"price": 1.0}, "order": ("price",)}, "are stated by points and order"),
        ({"points": {"price": 0.0}}, r"all points are 0 \| give at least one"),
        ({"order": ("price", "price")}, "a criterion stands twice in the order"),
        ({"points": {"price": 1.0, "ownership": 1.0}}, "count the same money twice"),
        ({"order": ("ownership", "weight", "price")}, "count the same money twice"),
        ({"pairs": ({"more": "price", "than": "ownership", "times": 2.0},)}, "count the same money twice"),
        ({"points": {}}, "at least 1"),
        ({"points": {"colour": 1.0}}, "points.colour"),
        ({"points": {"price": -1.0}}, "greater than or equal to 0"),
        ({"points": {"price": float("inf")}}, "finite"),
        ({"order": ()}, "at least 1"),
        ({"pairs": ()}, "at least 1"),
        ({"points": {"price": 1.0}, "sure": "quite"}, "very"),
    ],
)
def test_how_weights_cannot_be_stated(stated: dict[str, Any], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        Weights.model_validate(stated)


def test_a_pair_compares_two_criteria() -> None:
    assert Pair(more="price", than="weight", times=100.0)
    for times in (0.0, -1.0, 101.0):
        with pytest.raises(ValidationError):
            Pair(more="price", than="weight", times=times)
    with pytest.raises(ValidationError, match=r"compares 'price' with itself \| name two"):
        Pair(more="price", than="price", times=1.0)
