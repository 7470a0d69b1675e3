"""Rank reversal by min-max scaling (Shin, Lee, Chun and Chung 2013), in a minimal example made up here.

The second opinion must not only differ from ours but name the product that turns it round.
"""

import numpy as np

from spindlewise.decide.curves import Curve, merits_at
from spindlewise.decide.second_opinions import second_opinions
from spindlewise.decide.table import MeritTable


def test_a_product_dominated_by_both_turns_min_max_and_topsis_round() -> None:
    figures = np.array([[10.0, 4.0], [8.0, 6.0], [0.0, 4.0]])
    merits = merits_at((Curve((0.0, 10.0), (0.0, 1.0)),) * 2, figures)
    table = MeritTable(("A", "B", "D"), ("first", "second"), merits, merits, merits)
    shares = np.array([0.6, 0.4])

    _, with_d = second_opinions(table, shares, figures, ("more", "more"))
    _, without_d = second_opinions(table.keep(("A", "B")), shares, figures[:2], ("more", "more"))

    assert (without_d.first, without_d.reason) == ("A", None)
    assert with_d.first == "B"
    assert np.allclose(with_d.values, [0.6, 0.88, 0.0])
    assert with_d.reason is not None
    assert with_d.reason.reversed_by == ("D",)
    (stretch,) = with_d.reason.stretched
    # a unit of merit is the whole range for the first criterion, five times it for the second
    assert stretch.criterion == "second"
    assert np.isclose(stretch.effective_share, (0.4 / 0.2) / (0.4 / 0.2 + 0.6 / 1.0))
