"""Theil (1950) and Sen (1968, J. Am. Stat. Assoc. 63:1379-1389): slope by the median of pairs' slopes.

The general-purpose library's figures are the reference; formulas from memory.
"""

import numpy as np
import pytest
from scipy import stats

from spindlewise.bench.drift import robust_line


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("count", [6, 13, 48])
def test_the_line_is_that_of_the_general_library(seed, count):
    random = np.random.default_rng([seed, count])
    x = np.sort(random.uniform(0, 18_000, count))
    y = 2e-5 * x + 0.1 * random.standard_normal(count)
    slope, low, high, intercept = robust_line(x, y)
    reference = stats.theilslopes(y, x, alpha=0.95, method="joint")
    assert slope == pytest.approx(reference.slope)
    assert (low, high) == pytest.approx((reference.low_slope, reference.high_slope))
    assert intercept == pytest.approx(reference.intercept)
