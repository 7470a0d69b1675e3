"""Laws of the ranking: what may not change an order, and what must not improve one."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from laws.merit_tables import merit_tables, questions
from spindlewise.decide.curves import Curve
from spindlewise.decide.dominance import dominates
from spindlewise.decide.level import levels, ranks
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable


def named_order(table, weights, held):
    order = ranking_order(table.products, score(table, np.array(weights)).expected, held)
    return [table.products[row] for row in order]


@settings(deadline=None, max_examples=60)
@given(questions(), st.data())
def test_adding_or_removing_products_reorders_nobody(question, data):
    table, weights, held = question
    kept = data.draw(st.lists(st.sampled_from(table.products), unique=True, min_size=1))
    flags = dict(zip(table.products, held, strict=True))
    before = [product for product in named_order(table, weights, held) if product in kept]
    assert named_order(table.keep(kept), weights, [flags[product] for product in kept]) == before


@settings(deadline=None, max_examples=60)
@given(questions(least=2))
def test_a_score_has_the_same_bits_whoever_else_is_compared(question):
    table, weights, _ = question
    together = score(table, np.array(weights))
    for row, product in enumerate(table.products):
        alone = score(table.keep([product]), np.array(weights))
        assert alone.expected[0] == together.expected[row]
        assert alone.low[0] == together.low[row]
        assert alone.high[0] == together.high[row]


def test_a_score_has_the_same_bits_at_any_place_in_a_large_table():
    rng = np.random.default_rng(7)
    merits, weights = rng.random((1000, 12)), rng.random(12)
    names = tuple(str(k) for k in range(12))
    whole = score(MeritTable(tuple(map(str, range(1000))), names, merits, merits, merits), weights).expected
    for start in range(40):
        part = merits[start : start + 37]
        table = MeritTable(tuple(map(str, range(37))), names, part, part, part)
        assert np.array_equal(score(table, weights).expected, whole[start : start + 37])


@settings(deadline=None, max_examples=60)
@given(questions(), st.sampled_from([0.001, 0.1, 1 / 3, 7.0, 1000.0]))
def test_scaling_all_weights_changes_nothing(question, factor):
    table, weights, held = question
    scaled = [weight * factor for weight in weights]
    assert named_order(table, scaled, held) == named_order(table, weights, held)
    before, after = levels(table, np.array(weights), held), levels(table, np.array(scaled), held)
    assert np.array_equal(before.ranks, after.ranks)
    assert np.array_equal(before.level, after.level)


@settings(deadline=None, max_examples=60)
@given(questions(), st.data())
def test_the_order_of_rows_and_columns_is_irrelevant(question, data):
    table, weights, held = question
    rows = data.draw(st.permutations(range(len(table.products))))
    columns = data.draw(st.permutations(range(len(table.criteria))))
    turned = MeritTable(
        tuple(table.products[row] for row in rows),
        tuple(table.criteria[column] for column in columns),
        *(merits[np.ix_(rows, columns)] for merits in (table.low, table.expected, table.high)),
    )
    turned_weights, turned_held = [weights[column] for column in columns], [held[row] for row in rows]
    assert named_order(turned, turned_weights, turned_held) == named_order(table, weights, held)
    before, after = (
        levels(table, np.array(weights), held),
        levels(turned, np.array(turned_weights), turned_held),
    )
    assert np.array_equal(before.ranks[rows], after.ranks)
    assert np.array_equal(before.level[np.ix_(rows, rows)], after.level)


@settings(deadline=None, max_examples=60)
@given(questions(), st.data())
def test_a_lower_price_never_worsens_ones_own_place_or_rank(question, data):
    table, weights, held = question
    row = data.draw(st.integers(0, len(table.products) - 1))
    curve = Curve((300.0, 600.0, 900.0, 1500.0), (1.0, 0.6, 0.6, 0.0))
    dear = data.draw(st.integers(0, 2000))
    cheap = data.draw(st.integers(0, dear))

    def at_price(price):
        merits = np.array(table.expected)
        merits[row, 0] = curve.at(price)
        return MeritTable(table.products, table.criteria, merits, merits, merits)

    name = table.products[row]
    places = [named_order(at_price(price), weights, held).index(name) for price in (cheap, dear)]
    assert places[0] <= places[1]
    before, after = (ranks(at_price(price), np.array(weights), held)[row] for price in (cheap, dear))
    assert before <= after


@settings(deadline=None, max_examples=60)
@given(questions(least=2, least_weight=1))
def test_a_dominated_product_never_outranks_its_dominator(question):
    table, weights, _ = question
    order = named_order(table, weights, None)
    for i, better in enumerate(table.products):
        for j, worse in enumerate(table.products):
            if dominates(table.expected[i], table.expected[j]):
                assert order.index(better) < order.index(worse)


@settings(deadline=None, max_examples=60)
@given(questions())
def test_products_held_back_stand_after_all_others(question):
    table, weights, held = question
    flags = dict(zip(table.products, held, strict=True))
    in_order = [flags[product] for product in named_order(table, weights, held)]
    assert in_order == sorted(in_order)
    found = levels(table, np.array(weights), held)
    free = len(held) - sum(held)
    assert all(rank > free for rank, is_held in zip(found.ranks, held, strict=True) if is_held)
    assert all(rank <= free for rank, is_held in zip(found.ranks, held, strict=True) if not is_held)


@settings(deadline=None, max_examples=60)
@given(questions(least=2))
def test_level_is_mutual_and_depends_on_the_two_alone(question):
    table, weights, held = question
    found = levels(table, np.array(weights), held)
    assert np.array_equal(found.level, found.level.T)
    assert not found.level.diagonal().any()
    pair = table.keep(table.products[:2])
    assert levels(pair, np.array(weights), held[:2]).level[0, 1] == found.level[0, 1]


@settings(deadline=None, max_examples=60)
@given(merit_tables(certain=True))
def test_without_uncertainty_only_equal_scores_are_level(table):
    weights = np.ones(len(table.criteria))
    found, expected = levels(table, weights), score(table, weights).expected
    assert np.array_equal(found.level, (expected[:, None] == expected) & ~np.eye(len(expected), dtype=bool))


@settings(deadline=None, max_examples=60)
@given(questions())
def test_low_expected_and_high_scores_stand_in_order_within_0_to_100(question):
    table, weights, _ = question
    scores = score(table, np.array(weights))
    assert np.all((scores.low >= 0) & (scores.high <= 100))
    assert np.all((scores.low <= scores.expected) & (scores.expected <= scores.high))


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.integers(0, 20), min_size=2, max_size=6, unique=True).map(sorted),
    st.lists(st.integers(0, 10), min_size=6, max_size=6),
    st.tuples(st.floats(-5, 25), st.floats(-5, 25)).map(sorted),
    st.floats(0, 1),
)
def test_no_figure_within_an_interval_leaves_the_merits_stated_for_it(knots, merits, interval, where):
    curve = Curve(tuple(map(float, knots)), tuple(merit / 10 for merit in merits[: len(knots)]))
    low, high = interval
    least, most = curve.over(low, high)
    inside = min(max(low + where * (high - low), low), high)
    assert least - 1e-12 <= curve.at(inside) <= most + 1e-12
    reached = curve.at(np.append(np.linspace(low, high, 5), [x for x in curve.x if low <= x <= high]))
    assert (least, most) == (reached.min(), reached.max())
