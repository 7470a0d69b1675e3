"""Barron and Barrett 1996, Decision quality using ranked attribute weights: rank-order centroids, exactly."""

import pytest

from spindlewise.decide.order_weights import centroids, order_weights

TABLE = {
    2: "3/4 1/4",
    3: "11/18 5/18 1/9",
    4: "25/48 13/48 7/48 1/16",
    5: "137/300 77/300 47/300 9/100 1/25",
    6: "49/120 29/120 19/120 37/360 11/180 1/36",
    7: "363/980 223/980 153/980 319/2940 107/1470 13/294 1/49",
    8: "761/2240 481/2240 341/2240 743/6720 533/6720 73/1344 15/448 1/64",
}


@pytest.mark.parametrize("n", sorted(TABLE))
def test_the_table_of_weights_by_number_of_criteria(n: int) -> None:
    assert " ".join(map(str, centroids(n))) == TABLE[n]


def test_four_criteria_to_two_digits() -> None:
    weights = order_weights(["price", "weight", "stack", "warranty"])

    assert [round(weight, 2) for weight in weights.values()] == [0.52, 0.27, 0.15, 0.06]
