"""Deming regression against a general-purpose library: scipy's orthogonal distance regression (ODRPACK).

With the same spread of errors for every reading, weighted orthogonal distance regression of a straight line
is Deming regression; its own standard errors are other ones and are not compared.
"""

import warnings

import numpy as np
import pytest

from spindlewise.bench.deming import deming


@pytest.mark.parametrize("error_ratio", [0.25, 1.0, 3.0])
def test_scale_and_offset_are_those_of_odrpack(error_ratio: float) -> None:
    with warnings.catch_warnings():
        # scipy 1.17 announces that it will drop the module
        warnings.simplefilter("ignore", DeprecationWarning)
        odr = pytest.importorskip("scipy.odr")
    rng = np.random.default_rng(40)
    truth = rng.uniform(80, 350, 120)
    one = truth + rng.normal(0, 6, 120)
    two = 0.97 * truth + 5 + rng.normal(0, 6 * error_ratio**0.5, 120)
    data = odr.RealData(one, two, sx=1.0, sy=error_ratio**0.5)
    fitted = odr.ODR(data, odr.unilinear, beta0=[1.0, 0.0], sstol=1e-14, partol=1e-14).run()
    found = deming(one, two, error_ratio=error_ratio, independent=True)
    assert found is not None
    # the search stops where it gains nothing more; where the line ends that is nothing, at nought W it may be
    scale, offset = fitted.beta
    assert found.scale == pytest.approx(scale, rel=1e-6)
    assert [found.offset + found.scale * w for w in (80, 350)] == pytest.approx(
        [offset + scale * w for w in (80, 350)], rel=1e-6
    )
