"""Crank setting: pedals measure force, so a wrong crank length in the head unit scales every watt."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class CrankSettingError:
    """What a crank length that is set otherwise than ridden does to the reading; negative reads low.

    In percent of the true power, and in watts at threshold power (nothing where that is not stated).
    """

    set_mm: float
    ridden_mm: float
    error_pct: float
    error_w: float | None = None


def crank_setting_error(
    set_mm: float, ridden_mm: float, threshold_power_w: float | None = None
) -> CrankSettingError:
    """Give the error of a wrong crank length setting: 100 * (set / ridden - 1) percent.

    Power is force times crank length times angular speed, and the length is the one that is set. 170 set
    where 172.5 is ridden reads 1.4 % low. Raises ValueError unless each figure is more than zero and finite.

    >>> round(crank_setting_error(170, 172.5, 250).error_pct, 2)
    -1.45
    """
    figures = {"set_mm": set_mm, "ridden_mm": ridden_mm, "threshold_power_w": threshold_power_w}
    for name, figure in figures.items():
        if figure is not None and not 0 < figure < math.inf:
            raise ValueError(f"{name} is {figure}; it is more than zero and finite")
    error_pct = 100.0 * (set_mm / ridden_mm - 1.0)
    error_w = None if threshold_power_w is None else threshold_power_w * error_pct / 100
    return CrankSettingError(set_mm, ridden_mm, error_pct, error_w)
