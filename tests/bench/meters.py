"""Rides for the tests of this room: a true power in steps, and meters that err in known ways."""

from __future__ import annotations

import numpy as np

from spindlewise.bench.estimate import FloatArray

STEPS_W = (120.0, 250.0, 180.0, 300.0, 150.0, 220.0)


def autoregressive(rng: np.random.Generator, rides: int, seconds: int, phi: float, sd: float) -> FloatArray:
    """Give first-order autoregressive noise of standard deviation sd, shape (rides, seconds)."""
    from scipy.signal import lfilter

    warm_up = 200
    white = rng.standard_normal((rides, seconds + warm_up))
    noise = lfilter([1.0], [1.0, -phi], white, axis=1)[:, warm_up:]
    return np.asarray(noise * sd * np.sqrt(1.0 - phi**2), dtype=np.float64)


def stepped_power(seconds: int) -> FloatArray:
    """Give a true power in six equal steps."""
    return np.repeat(STEPS_W, -(-seconds // len(STEPS_W)))[:seconds]
