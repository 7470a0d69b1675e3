"""Several sessions of one product beside one reference: their bias, their spread, and how both move on."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.estimate import Estimate, FloatArray, around, t_quantile
from spindlewise.bench.pairing import paired

LEAST_SESSIONS = 3
"""Design choice, no source: fewer sessions say nothing of how sessions differ, and nothing is scored."""

LEAST_PLUS_MINUS_PCT = 0.2
"""Design choice, no source: no handful of sessions knows a bias more closely."""

MINUTE_S = 60
LEAST_OF_A_MINUTE_S = 30
"""Design choice, no source: a minute of which less than half is pedalled and read by both tells nothing."""


@dataclass(frozen=True, slots=True)
class SessionFigure:
    """A figure of several sessions in percent, and its plus-minus (k = 2), neither rounded."""

    pct: float
    plus_minus_pct: float


@dataclass(frozen=True, slots=True)
class SessionRecord:
    """What so many sessions come to: the mean difference and the spread about it."""

    count: int
    bias: SessionFigure
    spread: SessionFigure


def minute_differences_pct(first_w: npt.ArrayLike, second_w: npt.ArrayLike) -> FloatArray:
    """Give first minus second of each whole minute, in percent of the second's reading of that minute.

    Series of one clock, shape (n,), one reading a second, nan = gap. Only seconds in which both read above
    zero count, and only minutes with thirty of them or more: a coasting minute has no percent. The sum of
    one over the sum of the other, so that strong seconds count as they do in an average.

    >>> minute_differences_pct([101.0] * 90, [100.0] * 90).tolist()
    [1.0]
    """
    one, two = paired(first_w, second_w, "without zeros")
    minutes = len(one) // MINUTE_S
    shape = (minutes, MINUTE_S)
    one, two = one[: minutes * MINUTE_S].reshape(shape), two[: minutes * MINUTE_S].reshape(shape)
    whole = np.count_nonzero(~np.isnan(one), axis=1) >= LEAST_OF_A_MINUTE_S
    top, bottom = np.nansum(one[whole] - two[whole], axis=1), np.nansum(two[whole], axis=1)
    return np.asarray(100.0 * top / bottom, dtype=np.float64)


def session_record(mean_pct: Sequence[float], sd_pct: Sequence[float]) -> SessionRecord | None:
    """Give bias and spread of the sessions that count, or None for fewer than three.

    The bias is the mean over sessions, each counting once: what changes from day to day (zero offset,
    temperature) is what one long ride does not average out. The spread is the root of the mean square of the
    sessions' own standard deviations. Plus-minus of both: 2 s / sqrt(n), s the standard deviation over the
    sessions (JCGM 100:2008, 4.2.3, expanded with k = 2), and at least 0.2 %. With three sessions k = 2 is
    narrow (Student's t is 4.3 there); what the reference itself is off is not in it. Raises ValueError for
    lists of unlike length or figures that are not finite.

    >>> found = session_record([1.1, 0.6, 0.9], [1.3, 1.2, 1.4])
    >>> round(found.bias.pct, 2), round(found.bias.plus_minus_pct, 2), round(found.spread.pct, 2)
    (0.87, 0.29, 1.3)
    """
    means, spreads = np.asarray(mean_pct, dtype=np.float64), np.asarray(sd_pct, dtype=np.float64)
    if means.shape != spreads.shape or not (np.isfinite(means).all() and np.isfinite(spreads).all()):
        raise ValueError(
            f"{means.shape} mean differences and {spreads.shape} spreads; one of each a session, all finite"
        )
    if len(means) < LEAST_SESSIONS:
        return None
    return SessionRecord(
        count=len(means),
        bias=SessionFigure(float(means.mean()), _plus_minus(means)),
        spread=SessionFigure(float(np.sqrt((spreads**2).mean())), _plus_minus(spreads)),
    )


def change_along(at: Sequence[float], mean_pct: Sequence[float], level: float = 0.95) -> Estimate | None:
    """Give how much the bias moves per unit of `at` (1,000 km, or years) with its interval, or None.

    The slope of the least-squares line, Student's t with n - 2 degrees of freedom. No claim from fewer than
    three sessions or where all lie at one place. Raises ValueError for lists of unlike length.

    >>> change_along([0.0, 1.0, 9.0], [0.2, 0.3, 1.1]).value.__round__(3)
    0.1
    """
    x, y = np.asarray(at, dtype=np.float64), np.asarray(mean_pct, dtype=np.float64)
    if x.shape != y.shape:
        raise ValueError(f"{x.shape} places and {y.shape} mean differences; one of each a session")
    if len(x) < LEAST_SESSIONS or float(np.ptp(x)) <= 0.0:
        return None
    across = x - x.mean()
    sxx = float(across @ across)
    slope = float(across @ (y - y.mean())) / sxx
    residual = y - y.mean() - slope * across
    degrees = len(x) - 2
    error = math.sqrt(float(residual @ residual) / degrees / sxx)
    return around(slope, t_quantile(level, degrees) * error)


def _plus_minus(values: FloatArray) -> float:
    return max(LEAST_PLUS_MINUS_PCT, 2.0 * float(values.std(ddof=1)) / math.sqrt(len(values)))
