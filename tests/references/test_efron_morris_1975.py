"""Efron and Morris 1975, Data analysis using Stein's estimator: eighteen batters, 45 times at bat each.

Hits and the averages of the rest of the season as transcribed. The sums of squares printed in 1977 (.077 and
.022) do not recompute from averages of three digits, so the recomputed ones are held here.
"""

import numpy as np
import pytest

from spindlewise.decide.james_stein import james_stein

HITS = np.array([18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7])
REST_OF_SEASON = np.fromstring(
    ".346 .298 .276 .222 .273 .270 .263 .210 .269 .230 .264 .256 .303 .264 .226 .286 .316 .200", sep=" "
)
SHRUNK = np.fromstring(
    ".293914 .289210 .284507 .279804 .275100 .275100 .270397 .265693 .260990"
    " .260990 .256287 .256287 .256287 .256287 .256287 .251583 .246880 .242176",
    sep=" ",
)
PRINTED = np.fromstring(
    ".294 .289 .285 .280 .275 .275 .270 .266 .261 .261 .256 .256 .256 .256 .256 .252 .247 .242", sep=" "
)


def averages_and_variance() -> tuple[np.ndarray, float]:
    y = HITS / 45
    return y, y.mean() * (1 - y.mean()) / 45


def test_the_shrunken_averages() -> None:
    y, variance = averages_and_variance()

    found = james_stein(y, variance)

    assert found == pytest.approx(SHRUNK, abs=1e-6)
    assert found == pytest.approx(PRINTED, abs=6e-4)
    assert (found[0] - y.mean()) / (y[0] - y.mean()) == pytest.approx(0.2116534171442659)


def test_sixteen_of_eighteen_come_nearer_the_truth() -> None:
    y, variance = averages_and_variance()
    found = james_stein(y, variance)

    assert (np.abs(found - REST_OF_SEASON) < np.abs(y - REST_OF_SEASON)).sum() == 16
    assert ((y - REST_OF_SEASON) ** 2).sum() == pytest.approx(0.07548795061728396)
    assert ((found - REST_OF_SEASON) ** 2).sum() == pytest.approx(0.021374748547255785)


def test_the_arcsine_form_shrinks_alike() -> None:
    x = np.sqrt(45) * np.arcsin(2 * HITS / 45 - 1)

    found = james_stein(x, 1.0)

    assert (found[0] - x.mean()) / (x[0] - x.mean()) == pytest.approx(0.2089742320981226)
