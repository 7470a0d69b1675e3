"""Weights as people state them become shares."""

import pytest

from spindlewise.answer.weighing import weigh
from spindlewise.buyer.weights import Weights


def shares(**stated):
    return dict(weigh(Weights.model_validate(stated)).by_name)


def test_points_keep_their_ratios_and_zero_is_left_out():
    assert shares(points={"price": 60.0, "weight": 20.0, "stack": 0.0}) == {"price": 0.75, "weight": 0.25}


def test_an_order_becomes_rank_order_centroids():
    """Barron and Barrett 1996: 11/18, 5/18, 1/9 for three."""
    found = shares(order=("weight", "price", "detail"))

    assert found == pytest.approx({"price": 5 / 18, "weight": 11 / 18, "detail": 1 / 9})
    assert list(found) == ["price", "weight", "detail"]


def test_pairs_become_eigenvector_weights_with_their_consistency():
    pairs = (
        {"more": "price", "than": "weight", "times": 2.0},
        {"more": "weight", "than": "detail", "times": 3.0},
        {"more": "price", "than": "detail", "times": 6.0},
    )
    found = weigh(Weights.model_validate({"pairs": pairs}))

    assert dict(found.by_name) == pytest.approx({"price": 0.6, "weight": 0.3, "detail": 0.1})
    assert found.pairs.ratio == pytest.approx(0.0, abs=1e-9)


def test_pairs_that_do_not_hang_together_are_refused():
    pairs = (
        {"more": "price", "than": "weight", "times": 2.0},
        {"more": "stack", "than": "detail", "times": 3.0},
    )
    with pytest.raises(ValueError, match="price"):
        weigh(Weights.model_validate({"pairs": pairs}))
