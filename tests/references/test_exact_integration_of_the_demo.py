"""Stability against exact integration for the demo catalog.

With two weighed criteria the score is linear in one weight, so every product's chance of being first is the
probability of an interval of a beta distribution, which scipy gives exactly. The simulation must lie within
four standard errors (Lahdelma and Salminen 2001, SMAA-2, define the index; the integral is worked out here).
"""

from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from scipy import stats

from spindlewise.answer.asking import open_buyers
from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import rank
from spindlewise.buyer.weights import Weights
from spindlewise.catalog.opening import open_catalog
from spindlewise.decide.stability import stability
from spindlewise.decide.weight_draws import AroundShares, concentration

CATALOG = Path(__file__).parents[2] / "catalog"
DRAWS = 40_000


def exact_first(merits, alpha, beta, held):
    """The chance of each row to have the greatest w * a + (1 - w) * b, w ~ Beta(alpha, beta)."""
    free = [i for i in range(len(merits)) if not held[i]]
    cuts = {0.0, 1.0}
    for i in free:
        for j in free:
            lead = (merits[i] - merits[j]) @ np.array([1.0, -1.0])
            if lead:
                crossing = (merits[j][1] - merits[i][1]) / lead
                if 0 < crossing < 1:
                    cuts.add(float(crossing))
    edges = sorted(cuts)
    chances = np.zeros(len(merits))
    law = stats.beta(alpha, beta)
    for low, high in pairwise(edges):
        middle = (low + high) / 2
        scores = {i: middle * merits[i][0] + (1 - middle) * merits[i][1] for i in free}
        best = max(free, key=lambda i: (scores[i], -i))
        chances[best] += law.cdf(high) - law.cdf(low)
    return chances


@pytest.mark.parametrize("name", ["club-racer", "hill-counter", "undecided", "coach", "bay-loop"])
@pytest.mark.parametrize("pair", [("price", "weight"), ("price", "reading_uncertainty")])
def test_the_demo_within_four_standard_errors(name, pair):
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    buyers, _ = open_buyers(CATALOG / "buyers", catalog)
    weights = Weights(points={pair[0]: 60.0, pair[1]: 40.0})
    ranking = rank(Desk(catalog), buyers[name].model_copy(update={"weights": weights}))
    shares, sure = ranking.weighed.shares, concentration("fairly")
    found = stability(
        ranking.table,
        AroundShares(tuple(map(float, shares)), sure),
        held_back=ranking.held_back,
        draws=DRAWS,
        seed=11,
    )
    exact = exact_first(ranking.table.expected, sure * shares[0], sure * shares[1], ranking.held_back)

    assert exact.sum() == pytest.approx(1.0)
    error = np.sqrt(exact * (1 - exact) / DRAWS)
    assert np.all(np.abs(found.first - exact) <= 4 * error + 1e-12)


def exact_first_of_three(merits, shares, held, strips=400):
    """The same for three criteria, weights Dirichlet: the second weight by intervals, the first by strips.

    Given the first weight, what it leaves is parted by a beta distribution, so that `exact_first` gives the
    chances; over the first weight they are a mean over strips of equal probability, each at its middle.
    """
    first_law = stats.beta(shares[0], shares[1] + shares[2])
    chances = np.zeros(len(merits))
    for first in first_law.ppf((np.arange(strips) + 0.5) / strips):
        along = np.outer(first * merits[:, 0], [1.0, 1.0]) + (1 - first) * merits[:, 1:]
        chances += exact_first(along, shares[1], shares[2], held)
    return chances / strips


def test_the_strips_are_fine_enough():
    """A tie of three specialists: a third of the worlds each, whatever the strips."""
    found = exact_first_of_three(np.eye(3), (4.0, 4.0, 4.0), [False] * 3)
    assert found == pytest.approx([1 / 3] * 3, abs=2e-4)


BUYERS = sorted(path.stem for path in (CATALOG / "buyers").glob("*.yaml"))


@pytest.mark.parametrize("name", [name for name in BUYERS if name != "nothing-for-it"])
def test_every_buyer_of_the_demo_with_the_three_weights_that_count_most(name):
    catalog, problems = open_catalog(CATALOG)
    assert catalog is not None, problems
    buyers, _ = open_buyers(CATALOG / "buyers", catalog)
    asked = rank(Desk(catalog), buyers[name])
    heaviest = sorted(asked.weighed.by_name.items(), key=lambda item: (-item[1], item[0]))[:3]
    weights = Weights(points={criterion: 100 * share for criterion, share in heaviest})
    ranking = rank(Desk(catalog), buyers[name].model_copy(update={"weights": weights}))
    shares, sure = ranking.weighed.shares, concentration(buyers[name].weights.sure)
    assert len(ranking.table.products) > 1
    found = stability(
        ranking.table,
        AroundShares(tuple(map(float, shares)), sure),
        held_back=ranking.held_back,
        draws=DRAWS,
        seed=29,
    )
    exact = exact_first_of_three(ranking.table.expected, sure * shares, ranking.held_back)

    assert exact.sum() == pytest.approx(1.0)
    error = np.sqrt(exact * (1 - exact) / DRAWS)
    # the strips themselves are worth a ten-thousandth or two
    assert np.all(np.abs(found.first - exact) <= 4 * error + 5e-4)
