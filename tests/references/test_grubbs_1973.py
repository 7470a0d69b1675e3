"""Grubbs 1973, Errors of measurement, precision, accuracy and the statistical comparison of measuring
instruments, Technometrics 15:53-66: velocities of twelve rounds by three chronographs.

The data were seen identically in six transcriptions. The estimators are those of Grubbs 1948 (J Am Stat Assoc
43:243), from memory; the expected values were computed from them.
"""

import numpy as np
import pytest

from spindlewise.bench.agreement import agreement
from spindlewise.bench.collocation import grubbs_variances
from spindlewise.bench.three_meters import three_meters

FIRST = [793.8, 793.1, 792.4, 794.0, 791.4, 792.4, 791.7, 792.3, 789.6, 794.4, 790.9, 793.5]
SECOND = [794.6, 793.9, 793.2, 794.0, 792.2, 793.1, 792.4, 792.8, 790.2, 795.0, 791.6, 793.8]
THIRD = [793.2, 793.3, 792.6, 793.8, 791.6, 791.6, 791.6, 792.4, 788.5, 794.7, 791.3, 793.5]
OWN = (0.00651515152, 0.0525, 0.21863636364)


def test_own_error_variances() -> None:
    assert grubbs_variances(np.cov([FIRST, SECOND, THIRD])) == pytest.approx(OWN, abs=1e-9)


@pytest.mark.parametrize(
    ("other", "mean", "sd"), [(SECOND, -0.6083333333, 0.2429303429), (THIRD, 0.1166666667, 0.4745013332)]
)
def test_differences_from_the_first(other: list[float], mean: float, sd: float) -> None:
    found = agreement(FIRST, other, names=("F", "other"), percent_of="F", independent=True)
    assert (found.mean_difference.value, found.limits.sd) == pytest.approx((mean, sd), abs=1e-9)


def test_the_three_as_meters() -> None:
    """The second reads 0.6 higher than the others: that tells it apart by level, and nothing by scale."""
    found = three_meters([FIRST, SECOND, THIRD], ["F", "C", "T"], independent=True)
    assert found is not None
    assert [meter.grubbs_w2.value for meter in found.meters] == pytest.approx(OWN, abs=1e-9)
    assert found.by_level.odd == "C"
    assert found.by_scale.odd is None
