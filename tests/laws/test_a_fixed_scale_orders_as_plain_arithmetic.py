"""A fixed scale, made ready once, gives the order of reading, scoring and ordering one after another."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from laws.merit_tables import IDS
from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.fixed_scale import FixedScale
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable

TENTHS = st.integers(0, 10).map(lambda n: n / 10)
CURVES = st.lists(st.integers(-50, 400), min_size=1, max_size=4, unique=True).flatmap(
    lambda knots: st.lists(TENTHS, min_size=len(knots), max_size=len(knots)).map(
        lambda merits: Curve(tuple(float(x) for x in sorted(knots)), tuple(merits))
    )
)
NUDGE = st.sampled_from([0.0, 0.0, 0.0, 1e-12, -1e-12, 1e-9, 3e-9, 0.1])


@st.composite
def asked(draw, straight=False):
    """Curves, weights, ids and figures, many of them alike or apart by next to nothing."""
    curves = draw(st.lists(CURVES.filter(lambda c: len(c.x) == 2 or not straight), min_size=1, max_size=5))
    weights = draw(st.lists(st.integers(0, 20), min_size=len(curves), max_size=len(curves)).filter(any))
    ids = draw(st.permutations(IDS))[: draw(st.integers(0, 8))]
    cell = st.tuples(st.sampled_from([-60, 0, 50, 100, 150, 250, 300, 410]), NUDGE).map(sum)
    figures = [[draw(cell) for _ in curves] for _ in ids]
    held = draw(st.lists(st.sampled_from([False, False, True]), min_size=len(ids), max_size=len(ids)))
    return curves, np.array(weights, float), tuple(ids), np.array(figures, float), np.array(held, bool)


def plain(curves, weights, ids, figures, held):
    """Naive twin: read all merits, score a checked table, order."""
    merits = merits_at(curves, figures.reshape(len(ids), len(curves)))
    table = MeritTable(ids, tuple(f"c{k}" for k in range(len(curves))), merits, merits, merits)
    scores = score(table, weights).expected
    return scores, ranking_order(ids, scores, held)


def same(question):
    """Whether both give one order and the same bits of score."""
    curves, weights, ids, figures, held = question
    figures = figures.reshape(len(ids), len(curves))
    scale = FixedScale(ids, curves)
    scores, order = plain(curves, weights, ids, figures, held)
    assert scale.order(figures, weights, held).tolist() == order.tolist()
    assert scale.order(np.asfortranarray(figures), weights).tolist() == ranking_order(ids, scores).tolist()
    assert scale.scores(figures, weights).tobytes() == scores.tobytes()


@settings(deadline=None)
@given(asked())
def test_it_orders_and_scores_as_its_plain_twin(question):
    same(question)


@settings(deadline=None)
@given(asked(straight=True))
def test_so_it_does_where_every_curve_is_straight(question):
    same(question)


def test_so_it_does_for_many_products_with_many_ties():
    rng = np.random.default_rng(3)
    ids = tuple(f"p{i:05}" for i in rng.permutation(5000))
    curves = [Curve((0.0, 10.0), (0.0, 1.0)), Curve((0.0, 7.0), (0.9, 0.2)), Curve((3.0, 9.0), (0.4, 0.6))]
    figures = rng.integers(0, 11, (5000, 3)) + rng.choice([0.0, 0.0, 1e-10, -1e-11], (5000, 3))
    same((curves, np.array([3.0, 2.0, 1.0]), ids, figures, rng.random(5000) < 0.1))
