"""Laws of the simulation: chances add up, and mirror each other."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from laws.merit_tables import questions
from spindlewise.decide.merit_draws import SpreadMerits
from spindlewise.decide.stability import stability
from spindlewise.decide.weight_draws import AroundShares


@settings(deadline=None, max_examples=60)
@given(questions(), st.sampled_from([3.0, 63.0]), st.integers(0, 2), st.integers(0, 2**32))
def test_chances_add_up_and_beating_is_one_or_the_other(question, concentration, kind, seed) -> None:
    table, weights, held = question
    kinds = np.full(table.expected.shape, kind)
    n = len(table.products)

    found = stability(
        table,
        AroundShares(tuple(weights), concentration),
        SpreadMerits(table, kinds),
        held_back=held,
        draws=200,
        seed=seed,
    )

    assert np.allclose(found.places.sum(axis=0), 1.0)
    assert np.allclose(found.places.sum(axis=1), 1.0)
    assert np.allclose(found.beats + found.beats.T, 1.0 - np.eye(n))
    # a product's mean place is one below the top for each product that beats it
    assert np.allclose(found.places @ np.arange(n), found.beats.sum(axis=0))
    assert np.allclose(found.first.sum(), 0.0 if all(held) else 1.0)
    ever = found.first > 0
    assert np.allclose(found.central_weights[ever].sum(axis=1), 1.0)
    assert np.isnan(found.central_weights[~ever]).all()


@settings(deadline=None, max_examples=60)
@given(questions(least=2, least_weight=1, certain=True), st.integers(0, 2**32))
def test_a_dominated_product_never_beats_its_dominator(question, seed) -> None:
    table, weights, _ = question

    # so concentrated that no weight comes out too small to tell two products apart
    found = stability(table, AroundShares(tuple(weights), 399.0), draws=200, seed=seed)

    nowhere_worse = (table.expected[:, None] >= table.expected[None, :]).all(axis=2)
    dominates = nowhere_worse & ~nowhere_worse.T
    assert (found.beats[dominates] == 1.0).all()
