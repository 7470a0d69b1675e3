"""Own noise and relative scale of three or more meters from their covariances, without calling any right."""

from __future__ import annotations

import numpy as np

from spindlewise.bench.estimate import FloatArray

LEAST_METERS = 3


def grubbs_variances(covariances: FloatArray) -> FloatArray:
    """Give the variance of each meter's own errors if all have one scale, (..., k, k) to (..., k).

    For three s_ii - s_ij - s_ik + s_jk; for k the estimators of Grubbs 1948 (J Am Stat Assoc 43:243), which
    are the least-squares solution of var(x_i - x_j) = e_i + e_j over all pairs. An estimate below zero is
    left as it is: it says that the meter's noise is too small to be seen. Unlike scales count as noise here;
    see `consensus`. Raises ValueError for fewer than three meters.

    >>> import numpy as np
    >>> grubbs_variances(np.array([[9.0, 8.0, 8.0], [8.0, 10.0, 8.0], [8.0, 8.0, 12.0]])).tolist()
    [1.0, 2.0, 4.0]
    """
    k = _meters(covariances)
    own = np.diagonal(covariances, axis1=-2, axis2=-1)
    apart = (own[..., :, None] + own[..., None, :] - 2.0 * covariances).sum(axis=-1)
    together = apart.sum(axis=-1, keepdims=True) / (2.0 * (k - 1))
    return np.asarray((apart - together) / (k - 2))


def consensus(covariances: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give each meter's scale and the variance of its own errors, (..., k, k) to two of (..., k).

    Each meter reads offset_i + b_i * truth + its own error, errors independent of the truth and of each
    other; then s_ij = b_i b_j v with v the variance of the truth (triple collocation, Stoffelen 1998, J
    Geophys Res 103:7755). Nobody knows the truth's unit, so the scales are told against their geometric mean:
    prod(b_i) = 1. For three, b_i^2 v = s_ij s_ik / s_jk exactly; for more, log s_ij = log b_i + log b_j + log
    v over all pairs by least squares, which gives the same for three. The error variance, s_ii - b_i^2 v, is
    in the meter's own watts squared, and may come out below zero as Grubbs's may. nan where any two meters do
    not rise and fall together. Errors that two meters share (one crank's flex, one chain) count as truth.
    Raises ValueError for fewer than three meters.

    >>> import numpy as np
    >>> b, own = np.array([0.5, 1.0, 2.0]), np.array([1.0, 2.0, 3.0])
    >>> scale, variance = consensus(100.0 * np.outer(b, b) + np.diag(own))
    >>> scale.round(9).tolist(), variance.round(9).tolist()
    ([0.5, 1.0, 2.0], [1.0, 2.0, 3.0])
    """
    k = _meters(covariances)
    off = ~np.eye(k, dtype=np.bool_)
    together = np.asarray((covariances > 0.0) | ~off)
    logs = np.where(off & together, np.log(np.where(off & together, covariances, 1.0)), 0.0)
    rows = logs.sum(axis=-1)
    log_scale = (rows - rows.mean(axis=-1, keepdims=True)) / (k - 2)
    log_truth = rows.sum(axis=-1, keepdims=True) / (k * (k - 1))
    own = np.diagonal(covariances, axis1=-2, axis2=-1) - np.exp(2.0 * log_scale + log_truth)
    known = np.asarray(together.all(axis=(-2, -1)))[..., None]
    return np.where(known, np.exp(log_scale), np.nan), np.where(known, own, np.nan)


def _meters(covariances: FloatArray) -> int:
    k = int(covariances.shape[-1])
    if k < LEAST_METERS or covariances.shape[-2] != k:
        raise ValueError(
            f"covariances of shape {covariances.shape}; a square of at least {LEAST_METERS} meters is needed"
        )
    return k
