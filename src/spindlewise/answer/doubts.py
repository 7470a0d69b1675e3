"""What a consultant would say of the question itself: weights and needs that do not do what they seem to."""

from dataclasses import dataclass

import numpy as np

from spindlewise.answer.paid import Paid
from spindlewise.answer.ranking import Ranking
from spindlewise.decide.warnings import (
    AllAlike,
    CountedTwice,
    MissedByLittle,
    NobodyLeft,
    WithoutEffect,
    all_alike,
    counted_twice,
    missed_by_little,
    nobody_left,
    without_effect,
)

KIN = (("price", "ownership"), ("reading_uncertainty", "detail"))
"""Criteria that may count one thing twice: money, and a side that is doubled."""


@dataclass(frozen=True, slots=True)
class Doubts:
    """All warnings about one question; empty where there is nothing to say."""

    twice: tuple[CountedTwice, ...]
    alike: tuple[AllAlike, ...]
    idle: tuple[WithoutEffect, ...]
    nobody: NobodyLeft | None
    missed: tuple[MissedByLittle, ...]


def doubts(ranking: Ranking) -> Doubts:
    """Look at the question as it was asked of this catalog."""
    table, shares = ranking.table, ranking.weighed.shares
    some = bool(table.products)
    return Doubts(
        counted_twice(table, shares, KIN) if some else (),
        all_alike(table, shares) if some else (),
        without_effect(table, shares, ranking.held_back) if some else (),
        _nobody(ranking),
        _missed(ranking),
    )


def _nobody(ranking: Ranking) -> NobodyLeft | None:
    """Which need keeps everybody out, among products of the kind asked for that have a price."""
    failed = {name: {failure.need for failure in sifted.failures} for name, sifted in ranking.sifted.items()}
    names = [name for name, needs in failed.items() if not needs & {"kind", "state", "price"}]
    needs = sorted({need for name in names for need in failed[name]})
    passes = np.array([[need not in failed[name] for need in needs] for name in names], dtype=np.bool_)
    return nobody_left(names, needs, passes.reshape(len(names), len(needs)))


def _missed(ranking: Ranking) -> tuple[MissedByLittle, ...]:
    """What fails the budget alone, and by little."""
    budget = ranking.buyer.budget_amount
    if budget is None:
        return ()
    found = [
        (out.product, out.paid.amount)
        for out in ranking.excluded
        if [failure.need for failure in out.because] == ["budget"] and isinstance(out.paid, Paid)
    ]
    return missed_by_little([name for name, _ in found], [amount for _, amount in found], budget)
