"""Laws of changed weights: inside the stated bounds the first place stays, outside them it is lost."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from laws.merit_tables import questions
from spindlewise.decide.potentially_first import potentially_first
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.smallest_change import nearest_shares, smallest_change
from spindlewise.decide.table import MeritTable
from spindlewise.decide.weight_range import weight_ranges


def first_place(table, each, held=None):
    return table.products[ranking_order(table.products, score(table, each).expected, held)[0]]


def random_table(seed, n=6, m=4):
    rng = np.random.default_rng(seed)
    merits = rng.random((n, m))
    names, criteria = tuple(f"p{i}" for i in range(n)), tuple(f"c{k}" for k in range(m))
    return MeritTable(names, criteria, merits, merits, merits), rng.dirichlet(np.ones(m)), rng


def with_share(each, k, share):
    others = np.delete(each, k)
    ratios = others / others.sum() if others.any() else np.full(len(others), 1 / len(others))
    return np.insert((1 - share) * ratios, k, share)


@settings(deadline=None, max_examples=60)
@given(questions(least=2), st.floats(0.0, 1.0))
def test_just_inside_the_weight_range_first_stays_and_just_outside_it_is_lost(question, where):
    table, weights, held = question
    each = np.array(weights) / sum(weights)
    first = first_place(table, each, held)
    for k, found in enumerate(weight_ranges(table, np.array(weights), held)):
        assert found.low <= found.share <= found.high
        if len(each) == 1:
            continue
        inside = found.low + where * (found.high - found.low)
        if min(inside - found.low, found.high - inside) > 1e-6:
            assert first_place(table, with_share(each, k, inside), held) == first
        for end, rival, beyond in ((found.low, found.low_rival, -1e-6), (found.high, found.high_rival, 1e-6)):
            assert rival is not None or end in (0.0, 1.0)
            if rival is not None and 0 <= end + beyond <= 1:
                at_end = score(table, with_share(each, k, end)).expected
                lead = at_end[table.products.index(first)] - at_end[table.products.index(rival)]
                assert abs(lead) < 1e-8
                assert first_place(table, with_share(each, k, end + beyond), held) != first


@settings(deadline=None, max_examples=60)
@given(questions(least=2))
def test_the_smallest_change_draws_level_and_a_step_further_takes_the_first_place(question):
    table, weights, held = question
    each = np.array(weights) / sum(weights)
    change = smallest_change(table, each, held)
    first = first_place(table, each, held)
    if change is None:
        corners = np.eye(len(each))
        free = [product for product, flag in zip(table.products, held, strict=True) if flag == min(held)]
        rest = [product for product in free if product != first]
        for corner in corners:
            scores = dict(zip(table.products, score(table, corner).expected, strict=True))
            assert all(scores[product] <= scores[first] for product in rest)
        return
    assert change.first == first
    assert change.product != first
    assert np.all(change.shares >= 0)
    assert abs(change.shares.sum() - 1) < 1e-12
    assert abs(change.distance - np.linalg.norm(change.shares - each)) < 1e-12
    i, j = table.products.index(first), table.products.index(change.product)
    gain = table.expected[j] - table.expected[i]
    assert abs(gain @ change.shares) < 1e-10
    if gain.max() > 0:
        best = np.eye(len(each))[int(np.argmax(gain))]
        assert first_place(table, change.shares + 1e-6 * (best - change.shares), held) != first
    else:
        assert change.product < first


@pytest.mark.parametrize("seed", range(12))
def test_no_smaller_random_change_of_weights_changes_the_first_place(seed):
    table, each, rng = random_table(seed)
    change = smallest_change(table, each)
    assert change is not None
    first = first_place(table, each)
    steps = rng.normal(size=(4000, len(each)))
    steps -= steps.mean(axis=1, keepdims=True)
    steps *= (change.distance * rng.random(4000) ** 0.1 / np.linalg.norm(steps, axis=1))[:, None]
    tried = [each + step for step in steps if np.all(each + step >= 0)]
    assert len(tried) > 100
    assert all(first_place(table, nearby) == first for nearby in tried)


@pytest.mark.parametrize("seed", range(200))
def test_the_nearest_shares_meet_the_optimality_conditions(seed):
    """Karush, Kuhn and Tucker: the problem is convex, so what meets the conditions is the projection."""
    rng = np.random.default_rng(seed)
    m = int(rng.integers(2, 9))
    each = rng.dirichlet(np.full(m, 0.6))
    each[rng.random(m) < 0.25] = 0.0
    each = each / each.sum() if each.sum() else np.eye(m)[0]
    gain = rng.normal(-0.5, 0.4, m)
    gain[rng.integers(m)] = rng.random()
    nearest = nearest_shares(each, gain)
    assert np.all(nearest >= 0)
    assert abs(nearest.sum() - 1) < 1e-12
    if gain @ each >= 0:
        assert np.array_equal(nearest, each)
        return
    assert abs(gain @ nearest) < 1e-11
    # nearest - each = t * gain + theta + lambda, t >= 0, lambda >= 0 and 0 where the share is above 0
    carried = nearest > 0
    shape = np.column_stack((gain, np.ones(m)))
    (t, theta), *_ = np.linalg.lstsq(shape[carried], (nearest - each)[carried], rcond=None)
    assert np.allclose(shape[carried] @ [t, theta], (nearest - each)[carried], atol=1e-10)
    assert t >= -1e-12
    assert np.all((nearest - each - t * gain - theta)[~carried] >= -1e-10)


@settings(deadline=None, max_examples=30)
@given(questions(certain=True))
def test_a_product_can_be_first_exactly_when_weights_say_so(question):
    table, weights, held = question
    each = np.array(weights) / sum(weights)
    assert potentially_first(table, table.products.index(first_place(table, each, held)), held).can_be_first
    for row, product in enumerate(table.products):
        found = potentially_first(table, row, held)
        if found.can_be_first:
            scores = score(table, found.shares).expected
            others = [s for i, s in enumerate(scores) if i != row and held[i] == held[row]]
            assert scores[row] >= max(others, default=0.0) - 2e-6
            assert abs(found.shares.sum() - 1) < 1e-12
        assert found.product == product


@pytest.mark.parametrize("seed", range(10))
def test_no_random_weights_beat_the_best_margin_found(seed):
    table, _, rng = random_table(seed)
    for row in range(len(table.products)):
        found = potentially_first(table, row)
        leads = np.delete(table.expected[row] - table.expected, row, axis=0)
        tried = 100 * (rng.dirichlet(np.ones(leads.shape[1]), 3000) @ leads.T).min(axis=1)
        assert tried.max() <= found.margin + 1e-6
        assert found.can_be_first == (found.margin >= -1e-6)
