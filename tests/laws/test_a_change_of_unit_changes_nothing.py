"""Stating a figure and its curve in another unit changes no score and no place."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.table import MeritTable

GRAMS = Curve((280.0, 330.0, 450.0), (1.0, 0.6, 0.0))
EUROS = Curve((200.0, 1200.0), (1.0, 0.0))
NAMES = ("auk", "brant", "crake", "dunlin")


def ordered(figures, curves, shares):
    merits = merits_at(curves, figures)
    found = score(MeritTable(NAMES, ("weight", "price"), merits, merits, merits), shares)
    return found.expected, ranking_order(NAMES, found.expected).tolist()


@given(
    st.lists(st.tuples(st.integers(250, 480), st.integers(150, 1300)), min_size=4, max_size=4),
    st.sampled_from([1 / 28.349523125, 1e-3, 1000.0, 2.0**-7]),
    st.floats(0.1, 0.9),
)
@settings(deadline=None, max_examples=100)
def test_grams_ounces_or_tonnes(rows, factor, share):
    shares = np.array([share, 1 - share])
    figures = np.array(rows, dtype=np.float64)
    other = figures * np.array([factor, 1.0])
    restated = Curve(tuple(x * factor for x in GRAMS.x), GRAMS.merit)
    before, order = ordered(figures, (GRAMS, EUROS), shares)
    after, again = ordered(other, (restated, EUROS), shares)

    np.testing.assert_allclose(after, before, atol=2e-9)
    apart = np.abs(np.subtract.outer(before, before))[~np.eye(4, dtype=bool)]
    if apart.min() > 1e-8:
        assert again == order
