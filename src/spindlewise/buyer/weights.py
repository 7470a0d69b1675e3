"""How weights are stated: in points, as an order of importance, or as pairs."""

from typing import Annotated, Literal, Self, get_args

from pydantic import Field, model_validator

from spindlewise.buyer.model import Statement

CriterionName = Literal[
    "price",
    "ownership",
    "weight",
    "reading_uncertainty",
    "running_time",
    "warranty",
    "stack",
    "detail",
]
CRITERIA: tuple[CriterionName, ...] = get_args(CriterionName)
"""All criteria that can be weighed, in the order in which they are shown."""

Points = Annotated[float, Field(ge=0, le=1000)]


class Pair(Statement):
    """One statement: the first matters so many times as much as the second."""

    more: CriterionName
    than: CriterionName
    times: Annotated[float, Field(gt=0, le=100)]

    @model_validator(mode="after")
    def _two(self) -> Self:
        if self.more == self.than:
            raise ValueError(f"compares {self.more!r} with itself | name two different criteria")
        return self


class Weights(Statement):
    """Exactly one of points, order or pairs; and how sure the buyer is of them."""

    points: Annotated[dict[CriterionName, Points], Field(min_length=1)] | None = None
    """Any non-negative numbers; only their ratios count."""
    order: Annotated[tuple[CriterionName, ...], Field(min_length=1)] | None = None
    """From most to least important; turned into numbers by rank-order centroids."""
    pairs: Annotated[tuple[Pair, ...], Field(min_length=1)] | None = None
    """Statements 'this matters so many times as much as that'."""
    sure: Literal["very", "fairly", "barely"] = "fairly"
    """How sure the buyer is of these weights; used by the simulation only."""

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        ways = [name for name in ("points", "order", "pairs") if getattr(self, name) is not None]
        if len(ways) != 1:
            said = " and ".join(ways) if ways else "none of them"
            raise ValueError(f"are stated by {said} | state them by exactly one of points, order, pairs")
        if self.points is not None and sum(self.points.values()) <= 0:
            raise ValueError("all points are 0 | give at least one criterion more than 0")
        if self.order is not None and len(set(self.order)) != len(self.order):
            raise ValueError("a criterion stands twice in the order | name each once")
        named = self.named()
        if "price" in named and "ownership" in named:
            raise ValueError("price and ownership count the same money twice | weigh one of them")
        return self

    def named(self) -> frozenset[str]:
        """The criteria that the statement names with more than nothing."""
        if self.points is not None:
            return frozenset(k for k, v in self.points.items() if v > 0)
        if self.order is not None:
            return frozenset(self.order)
        return frozenset(n for p in self.pairs or () for n in (p.more, p.than))
