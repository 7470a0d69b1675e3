"""Second opinions on a ranking: the raw figures as other methods of the trade want them."""

import numpy as np

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking
from spindlewise.answer.standing import Standing
from spindlewise.decide.other_methods import Direction
from spindlewise.decide.second_opinions import SecondOpinion, second_opinions
from spindlewise.decide.table import FloatArray


def second_look(desk: Desk, ranking: Ranking) -> tuple[SecondOpinion, ...]:
    """What TOPSIS and the min-max weighted sum would put first, and why where they differ."""
    columns, directions = [], []
    for k, criterion in enumerate(ranking.table.criteria):
        sense = desk.yardstick.curves[criterion].sense if criterion in desk.yardstick.curves else "mixed"
        if sense == "mixed":
            columns.append(ranking.table.expected[:, k])
            directions.append("more")
        else:
            columns.append(_figures(desk, ranking, criterion))
            directions.append(sense)
    values = np.column_stack(columns)
    senses: list[Direction] = ["less" if d == "less" else "more" for d in directions]
    return second_opinions(ranking.table, ranking.weighed.shares, values, senses, ranking.held_back)


def _figures(desk: Desk, ranking: Ranking, criterion: str) -> FloatArray:
    return np.array(
        [expected_figure(desk, ranking.standings[name][criterion]) for name in ranking.table.products],
        dtype=np.float64,
    )


def expected_figure(desk: Desk, standing: Standing) -> float:
    """The figure itself; for an unknown one the end of the plausible span that scores least.

    Where there is none, the knot of the curve that scores least stands in.
    """
    if standing.value is not None:
        return float(standing.value)
    curve = desk.yardstick.curves[standing.criterion]
    ends = desk.yardstick.spans[standing.criterion] if standing.origin == "unknown" else curve.x
    return min(ends, key=lambda x: float(curve.at(x)))
