"""Weights from an order of importance."""

import pytest

from spindlewise.decide.order_weights import centroids, order_weights


def test_each_place_weighs_more_than_the_next() -> None:
    weights = list(order_weights(["price", "weight", "warranty", "stack"]).values())

    assert weights == sorted(weights, reverse=True)
    assert sum(weights) == pytest.approx(1.0)


def test_criteria_given_together_share_the_weights_of_their_places() -> None:
    apart = order_weights(["price", "weight", "warranty", "stack"])

    together = order_weights(["price", ("weight", "warranty"), "stack"])

    assert together["weight"] == together["warranty"]
    assert together["weight"] == pytest.approx((apart["weight"] + apart["warranty"]) / 2)
    assert (together["price"], together["stack"]) == (apart["price"], apart["stack"])


def test_all_together_is_equal_weights() -> None:
    assert order_weights([("price", "weight", "stack")]) == pytest.approx(
        {"price": 1 / 3, "weight": 1 / 3, "stack": 1 / 3}
    )


def test_one_criterion_bears_all() -> None:
    assert order_weights(["price"]) == {"price": 1.0}


def test_a_long_order_still_adds_up_exactly() -> None:
    assert sum(centroids(200)) == 1


def test_every_fault_of_an_order_is_named() -> None:
    with pytest.raises(
        ValueError,
        match=r"^a group in the order of importance is empty; leave it out;"
        r" each criterion stands once in the order; more than once: price, stack$",
    ):
        order_weights(["price", ("stack", "stack"), (), "price", "weight"])


def test_an_empty_order_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^the order of importance is empty; name at least one criterion$"):
        order_weights([])


def test_no_places_are_refused() -> None:
    with pytest.raises(ValueError, match="0 places"):
        centroids(0)
