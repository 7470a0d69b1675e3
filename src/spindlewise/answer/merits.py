"""Turns standings into merits by the catalog's value curves."""

from typing import TypeAlias

from spindlewise.answer.standing import Standing
from spindlewise.catalog.criteria import Criteria, CurveCriterion, StepsCriterion
from spindlewise.decide.curves import Curve, Steps
from spindlewise.reception.unmeasured import Plausible, Unmeasured

MeritSpan: TypeAlias = tuple[float, float, float]
"""A merit as low, expected and high."""


class Yardstick:
    """All value curves of a catalog, ready to be asked."""

    def __init__(self, criteria: Criteria) -> None:
        self.currency = criteria.currency
        self.curves: dict[str, Curve] = {}
        self.spans: dict[str, tuple[float, float]] = {}
        self.steps: dict[str, Steps] = {}
        self.titles: dict[str, str] = {}
        self.units: dict[str, str] = {}
        spans = criteria.criteria.reading_uncertainty.not_measured
        self.unmeasured = Unmeasured(
            temperature=Plausible(spans.temperature_pct.low, spans.temperature_pct.high),
            bench_spread=Plausible(spans.bench_spread_pct.low, spans.bench_spread_pct.high),
        )
        for name in type(criteria.criteria).model_fields:
            criterion: CurveCriterion | StepsCriterion = getattr(criteria.criteria, name)
            self.titles[name] = criterion.title
            if isinstance(criterion, StepsCriterion):
                self.steps[name] = Steps(dict(criterion.steps))
                self.units[name] = ""
            else:
                self.curves[name] = Curve(
                    tuple(k.at for k in criterion.knots), tuple(k.merit for k in criterion.knots)
                )
                self.spans[name] = (criterion.plausible.low, criterion.plausible.high)
                self.units[name] = criterion.unit

    def merits(self, standing: Standing) -> MeritSpan:
        """The low, expected and high merit of a standing.

        An unknown figure has the merits of the plausible span and expects the low end; where there is none,
        or the question does not apply, the product cannot deliver it and has the least merit of the curve.
        """
        name = standing.criterion
        if name in self.steps:
            step = self.steps[name]
            if standing.value is None:
                low, high = step.over(standing.possible or None)
                return (low, low, high) if standing.origin == "unknown" else (low, low, low)
            expected = float(step.at([str(standing.value)])[0])
            return expected, expected, expected
        curve = self.curves[name]
        if standing.value is None:
            if standing.origin == "unknown":
                low, high = curve.over(*self.spans[name])
                return low, low, high
            least = min(curve.merit)
            return least, least, least
        value = float(standing.value)
        expected = curve.of(value)
        if standing.low is None or standing.high is None:
            return expected, expected, expected
        low, high = curve.over(standing.low, standing.high)
        return low, expected, high
