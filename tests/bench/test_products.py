import numpy as np
import pytest

from spindlewise.bench.products import sum_of_products


def test_it_is_the_scalar_product() -> None:
    first, second = np.random.default_rng(1).normal(size=(2, 20_000))
    assert sum_of_products(first, second) == pytest.approx(float(np.dot(first, second)), rel=1e-12)
    assert sum_of_products(first[:0], second[:0]) == 0.0


def test_unlike_lengths_are_refused() -> None:
    with pytest.raises(ValueError, match="operand"):
        sum_of_products(np.ones(3), np.ones(4))
