"""Value curves and plausible spans: what a figure is worth on a fixed scale, whoever the candidates are."""

from itertools import pairwise
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from spindlewise.catalog.model import Currency, Record, Text

Merit = Annotated[float, Field(ge=0, le=1)]


class Knot(Record):
    """One corner of a value curve."""

    at: float
    merit: Merit


class Span(Record):
    """Between which figures an unknown one may plausibly lie."""

    low: float
    high: float

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.low > self.high:
            raise ValueError("low stands above high | exchange them")
        return self


class CurveCriterion(Record):
    """A criterion scored by a piecewise linear curve between knots, flat outside them."""

    title: Text
    what: Text
    """What is scored, in one sentence for a buyer."""
    unit: Text
    knots: Annotated[tuple[Knot, ...], Field(min_length=2)]
    plausible: Span
    """Used, and shown as unknown, where nobody knows the figure."""
    source: Text
    """Why these knots: a value curve is a judgement and says whose."""

    @model_validator(mode="after")
    def _rising(self) -> Self:
        places = [k.at for k in self.knots]
        if any(b <= a for a, b in pairwise(places)):
            raise ValueError("the knots do not stand in rising order of `at` | sort them, each `at` once")
        return self


class Plausible(Span):
    """Between which sizes of an error, in percent, a cause that nobody has measured may plausibly lie."""

    @model_validator(mode="after")
    def _no_less_than_nothing(self) -> Self:
        if self.low < 0:
            raise ValueError("low is less than 0 | write the size of the error, without a sign")
        return self


class NotMeasured(Record):
    """What causes of the reading's uncertainty may plausibly come to while nobody has measured them.

    They count by the high end, and the low end is shown as how good the reading may be.
    """

    temperature_pct: Plausible = Plausible.model_construct(low=0.3, high=1.2)
    """Drift over ten degrees without a new zero offset, in percent."""
    bench_spread_pct: Plausible = Plausible.model_construct(low=0.6, high=1.5)
    """One standard deviation of the difference from a reference, in percent: what no tolerance speaks of."""
    source: Text = "common practice, no source"
    """Why these spans."""


class ReadingCriterion(CurveCriterion):
    """The curve of the uncertainty of the reading, and what causes that nobody has measured may come to."""

    not_measured: NotMeasured = NotMeasured.model_construct()  # unchecked, so that nothing is built yet


class StepsCriterion(Record):
    """A criterion scored by name, for what is not a number."""

    title: Text
    what: Text
    steps: dict[str, Merit]
    source: Text


class Curves(Record):
    """One entry for each criterion that the engine knows."""

    price: CurveCriterion
    ownership: CurveCriterion
    weight: CurveCriterion
    reading_uncertainty: ReadingCriterion
    running_time: CurveCriterion
    warranty: CurveCriterion
    stack: CurveCriterion
    detail: StepsCriterion


class Criteria(Record):
    """The file criteria.yaml."""

    schema_: Literal["spindlewise criteria 1"] = Field(alias="schema")
    currency: Currency
    """The currency in which the knots of price and ownership stand, tax in."""
    criteria: Curves
