"""What a thing weighs: mean of repeated weighings and how far off it may be (GUM, type A and type B)."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, get_args

import numpy as np

from spindlewise.bench.estimate import t_quantile

Coverage = Literal["t", "two"]
"""Where the coverage factor comes from: Student's t of the effective degrees of freedom, or plainly 2."""

LEVEL = 0.9545
"""The level at which t tends to 2 as the degrees of freedom grow (JCGM 100:2008, G.6.4 and table G.2)."""


@dataclass(frozen=True, slots=True)
class WeightBasis:
    """What lay on the scales, in the catalog's words."""

    count: str
    batteries: str
    cleats: str


@dataclass(frozen=True, slots=True)
class Scale:
    """A pair of scales: its step, what its certificate corrects, and how well that is known.

    `correction_g` is added to each reading. `calibration_g` is the certificate's expanded uncertainty with
    its `calibration_coverage`; None where there is no certificate, which a weighing then says. Raises
    ValueError for a step that is not above zero, or an uncertainty below it.
    """

    name: str
    resolution_g: float
    correction_g: float = 0.0
    calibration_g: float | None = None
    calibration_coverage: float = 2.0

    def __post_init__(self) -> None:
        known = 0.0 if self.calibration_g is None else self.calibration_g
        if not (
            0.0 < self.resolution_g < math.inf and 0.0 <= known < math.inf and self.calibration_coverage > 0.0
        ):
            raise ValueError(
                f"a resolution of {self.resolution_g} g and a calibration known to {self.calibration_g} g;"
                " the resolution is above 0, the calibration 0 or more, and its coverage factor above 0"
            )


@dataclass(frozen=True, slots=True)
class Component:
    """One cause of doubt: its standard uncertainty, from readings (A) or otherwise known (B)."""

    cause: str
    type: Literal["A", "B"]
    standard_g: float
    degrees_of_freedom: float


@dataclass(frozen=True, slots=True)
class Weighing:
    """A weight, its basis, and its uncertainty; `left_out` names what nobody could put into it."""

    mean_g: float
    basis: WeightBasis
    scale: str
    count: int
    components: tuple[Component, ...]
    coverage: Coverage
    left_out: tuple[str, ...]

    @property
    def combined_g(self) -> float:
        """The combined standard uncertainty: root of the sum of squares of all components."""
        return math.hypot(*(part.standard_g for part in self.components))

    @property
    def type_a_g(self) -> float:
        """The standard uncertainty from repeated readings; 0 where there was no repeat (see `left_out`)."""
        return math.hypot(*(part.standard_g for part in self.components if part.type == "A"))

    @property
    def type_b_g(self) -> float:
        """The standard uncertainty known otherwise: the scale's step and its calibration."""
        return math.hypot(*(part.standard_g for part in self.components if part.type == "B"))

    @property
    def degrees_of_freedom(self) -> float:
        """Effective degrees of freedom, u^4 / sum(u_i^4 / v_i) (Welch-Satterthwaite, JCGM 100:2008, G.2b)."""
        terms = sum(part.standard_g**4 / part.degrees_of_freedom for part in self.components)
        return self.combined_g**4 / terms if terms > 0.0 else math.inf

    @property
    def coverage_factor(self) -> float:
        """Student's t of the effective degrees of freedom at 95.45 %, or 2."""
        return 2.0 if self.coverage == "two" else t_quantile(LEVEL, self.degrees_of_freedom)

    @property
    def expanded_g(self) -> float:
        """The expanded uncertainty: coverage factor times combined standard uncertainty."""
        return self.coverage_factor * self.combined_g


def weigh(
    readings_g: Sequence[float],
    *,
    scale: Scale,
    basis: WeightBasis,
    tare_readings_g: Sequence[float] = (),
    coverage: Coverage = "two",
) -> Weighing:
    """Give the mean of repeated weighings on one scale with its uncertainty (JCGM 100:2008, 4.2 and 4.3).

    Type A: s / sqrt(n) of the readings, n - 1 degrees of freedom. Type B: the step d, d / sqrt(12), and the
    calibration, expanded / coverage. A tare (tray, bag) weighed on its own is taken off with its own repeats
    and step.

    `coverage="two"` takes k = 2, which ISO 14253-1 decides by: with neither tare nor certificate it is the
    demo catalog's rule, 2 sqrt(s^2 / n + d^2 / 12). `coverage="t"` takes Student's t of the effective degrees
    of freedom at 95.45 %, which is wider, since few readings may agree by chance: of the demo's 23 weighings
    three then have 2 g in place of 1 g. The default is 2, because the scatter of rounded readings holds the
    step already, which is then counted again.

    A single reading has no type A, which `left_out` says. Raises ValueError without a reading, for readings
    that are not finite and above zero, and for an unknown coverage.

    >>> scale, basis = Scale("counter scale", 1.0), WeightBasis("pair", "in", "off")
    >>> found = weigh([318, 318, 318, 319, 317], scale=scale, basis=basis)
    >>> found.mean_g, round(found.type_a_g, 3), round(found.type_b_g, 3), round(found.expanded_g, 3)
    (318.0, 0.316, 0.289, 0.856)
    """
    readings = _readings(readings_g, 1)
    tare = _readings(tare_readings_g, 0)
    if coverage not in get_args(Coverage):
        raise ValueError(f"a coverage of {coverage!r}; it is one of: {', '.join(get_args(Coverage))}")
    components, left_out = [], []
    for what, values in (("readings", readings), ("tare", tare)):
        if len(values) > 1:
            error = float(values.std(ddof=1)) / math.sqrt(len(values))
            components.append(Component(f"{what}: repeats", "A", error, len(values) - 1))
        elif len(values) == 1:
            left_out.append(f"{what}: repeats")
        if len(values):
            components.append(Component(f"{what}: step", "B", scale.resolution_g / math.sqrt(12.0), math.inf))
    if scale.calibration_g is None:
        left_out.append("calibration")
    else:
        known = scale.calibration_g / scale.calibration_coverage
        components.append(Component("calibration", "B", known, math.inf))
    mean = float(readings.mean()) + scale.correction_g - (float(tare.mean()) if len(tare) else 0.0)
    return Weighing(mean, basis, scale.name, len(readings), tuple(components), coverage, tuple(left_out))


def rounded_up(value: float, step: float = 1.0) -> float:
    """Give an uncertainty rounded up to whole steps, as an observation states it; a whole one stays.

    >>> rounded_up(0.856), rounded_up(1.0), rounded_up(0.18, 0.1)
    (1.0, 1.0, 0.2)
    """
    # nine digits: what is whole but for the rounding of the arithmetic is whole
    return float(round(math.ceil(round(value / step, 9)) * step, 9))


def _readings(readings_g: Sequence[float], least: int) -> np.ndarray:
    values = np.asarray(readings_g, dtype=np.float64)
    if values.ndim != 1 or len(values) < least or not (np.isfinite(values) & (values > 0.0)).all():
        raise ValueError(f"readings {list(readings_g)}; at least {least}, each finite and above 0 g")
    return values
