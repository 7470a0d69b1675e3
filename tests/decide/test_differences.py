import math

import numpy as np
import pytest

from spindlewise.decide.differences import Difference, differences
from spindlewise.decide.score import score
from spindlewise.decide.table import MeritTable


def test_points_won_and_lost_stand_by_size_and_equal_ones_by_name():
    merits = np.array([[1.0, 0.4, 0.5, 0.5], [0.5, 0.9, 0.5, 0.75]])
    table = MeritTable(("heron", "siskin"), ("weight", "price", "stack", "warranty"), merits, merits, merits)
    found = differences(table, np.ones(4), 0, 1)
    assert (found.product, found.rival) == ("heron", "siskin")
    assert found.parts == (
        Difference("price", -12.5),
        Difference("weight", 12.5),
        Difference("warranty", -6.25),
        Difference("stack", 0.0),
    )
    assert found.total == -6.25


@pytest.mark.parametrize("seed", range(20))
def test_the_parts_add_up_to_the_difference_of_the_scores(seed):
    rng = np.random.default_rng(seed)
    merits, weights = rng.random((5, 12)), rng.random(12)
    table = MeritTable(tuple("abcde"), tuple("lmnopqrstuvw"), merits, merits, merits)
    scores = score(table, weights).expected
    there, back = differences(table, weights, 1, 3), differences(table, weights, 3, 1)
    assert there.total == scores[1] - scores[3] == -back.total
    assert math.fsum(part.points for part in there.parts) == pytest.approx(there.total, abs=2e-9)
    assert {part.criterion: -part.points for part in back.parts} == {
        p.criterion: p.points for p in there.parts
    }


def test_weights_that_do_not_fit_are_refused():
    merits = np.array([[1.0], [0.5]])
    with pytest.raises(ValueError, match="one a criterion"):
        differences(MeritTable(("a", "b"), ("x",), merits, merits, merits), np.ones(2), 0, 1)
