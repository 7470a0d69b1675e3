"""Lin 1989, A concordance correlation coefficient to evaluate reproducibility, Biometrics 45:255-268.

Lin's own data were not found. The checks are worked by hand, or printed in the documentation of two general
libraries (torchmetrics with moments over n - 1, Keras with moments over n), or computed from the formulas on
the peak-flow data of Bland and Altman 1986, the interval with the standard error as corrected in 2000.
"""

import pytest

from spindlewise.bench.concordance import concordance

LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]


@pytest.mark.parametrize(
    ("first", "second", "ddof", "published"),
    [
        ([2.5, 0.0, 2, 8], [3, -0.5, 2, 7], 1, 0.9777),
        ([0, 1, 0.5], [0.1, 0.9, 0.5], 0, 0.97560976),
        ([1, 1, 0.2], [1, 0.9, 0.2], 0, 0.98765432),
    ],
)
def test_values_printed_by_two_libraries(
    first: list[float], second: list[float], ddof: int, published: float
) -> None:
    found = concordance(first, second, ddof=ddof, independent=True)
    assert found is not None
    assert found.value == pytest.approx(published, abs=5e-5)


@pytest.mark.parametrize(
    ("second", "ddof", "by_hand"),
    [
        ([2, 3, 4, 5, 6], 0, 4 / 5),
        ([2, 3, 4, 5, 6], 1, 5 / 6),
        ([5, 4, 3, 2, 1], 0, -1.0),
        ([1, 2, 3, 4, 5], 0, 1.0),
    ],
)
def test_by_hand(second: list[float], ddof: int, by_hand: float) -> None:
    found = concordance([1, 2, 3, 4, 5], second, ddof=ddof, independent=True)
    assert found is not None
    assert found.value == pytest.approx(by_hand, abs=1e-12)


def test_peak_flow() -> None:
    found = concordance(LARGE, MINI, independent=True)
    assert found is not None
    assert found.interval is not None
    assert found.value == pytest.approx(0.9427424314274846, abs=1e-12)
    assert found.precision == pytest.approx(0.943279446890946, abs=1e-12)
    assert found.accuracy == pytest.approx(0.9994306931363431, abs=1e-12)
    assert found.scale_shift == pytest.approx(1.0282679905624332, abs=1e-12)
    assert found.location_shift == pytest.approx(-0.019030250091597076, abs=1e-12)
    assert (found.interval.low, found.interval.high) == pytest.approx(
        (0.8504918731685605, 0.9787262791701226)
    )


def test_peak_flow_over_n_less_1() -> None:
    found = concordance(LARGE, MINI, ddof=1, independent=True)
    assert found is not None
    assert found.value == pytest.approx(0.9427524674224536, abs=1e-12)
