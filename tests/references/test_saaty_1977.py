"""Saaty 1977, A scaling method for priorities in hierarchical structures, and his drink consumption example.

Both matrices are from memory; their eigenvectors agree with the published ones to the third digit, and the
values below are recomputed in full.
"""

import pytest

from spindlewise.decide.pair_weights import PairWeights, pair_weights

PHILADELPHIA = [
    [1, 1 / 3, 8, 3, 3, 7],
    [3, 1, 9, 3, 3, 9],
    [1 / 8, 1 / 9, 1, 1 / 6, 1 / 5, 2],
    [1 / 3, 1 / 3, 6, 1, 1 / 3, 6],
    [1 / 3, 1 / 3, 5, 3, 1, 6],
    [1 / 7, 1 / 9, 1 / 2, 1 / 6, 1 / 6, 1],
]
DRINKS = [
    [1, 9, 5, 2, 1, 1, 1 / 2],
    [1 / 9, 1, 1 / 3, 1 / 9, 1 / 9, 1 / 9, 1 / 9],
    [1 / 5, 3, 1, 1 / 3, 1 / 4, 1 / 3, 1 / 9],
    [1 / 2, 9, 3, 1, 1 / 2, 1, 1 / 3],
    [1, 9, 4, 2, 1, 2, 1 / 2],
    [1, 9, 3, 1, 1 / 2, 1, 1 / 3],
    [2, 9, 9, 3, 2, 3, 1],
]


def stated(matrix: list[list[float]]) -> PairWeights:
    n = len(matrix)
    return pair_weights([(f"c{i}", f"c{k}", matrix[i][k]) for i in range(n) for k in range(i + 1, n)])


def test_distances_from_philadelphia() -> None:
    found = stated(PHILADELPHIA)

    assert list(found.weights.values()) == pytest.approx(
        [0.2618527459, 0.3974863738, 0.0334347369, 0.1163865516, 0.1642405647, 0.0265990271], abs=1e-9
    )
    assert list(found.weights.values()) == pytest.approx([0.263, 0.397, 0.033, 0.116, 0.164, 0.027], abs=2e-3)
    assert found.lambda_max == pytest.approx(6.453629623143703, abs=1e-9)
    assert found.index == pytest.approx(0.09072592462874063, abs=1e-9)
    assert found.ratio == pytest.approx(0.07316606824898438, abs=1e-9)


def test_consumption_of_drinks() -> None:
    found = stated(DRINKS)

    assert list(found.weights.values()) == pytest.approx(
        [0.1774567474, 0.019149476, 0.0418311817, 0.1164170317, 0.1895723753, 0.1287805485, 0.3267926393],
        abs=1e-9,
    )
    assert list(found.weights.values()) == pytest.approx(
        [0.177, 0.019, 0.042, 0.116, 0.190, 0.129, 0.327], abs=6e-4
    )
    assert found.lambda_max == pytest.approx(7.17662903933035, abs=1e-8)
    assert found.ratio == pytest.approx(0.02230164638, abs=1e-8)


@pytest.mark.parametrize(
    ("matrix", "weights", "lambda_max", "ratio"),
    [
        (
            [[1, 3, 5], [1 / 3, 1, 3], [1 / 5, 1 / 3, 1]],
            [0.6369855717, 0.2582849944, 0.1047294339],
            3.0385110905581745,
            0.0331992160,
        ),
        (
            [[1, 4, 3, 7], [1 / 4, 1, 1 / 3, 3], [1 / 3, 3, 1, 5], [1 / 7, 1 / 3, 1 / 5, 1]],
            [0.547569239, 0.1265552844, 0.2699499225, 0.0559255542],
            4.118418024313366,
            0.0438585275,
        ),
        ([[1, 2, 6], [0.5, 1, 3], [1 / 6, 1 / 3, 1]], [0.6, 0.3, 0.1], 3.0, 0.0),
    ],
)
def test_small_matrices(
    matrix: list[list[float]], weights: list[float], lambda_max: float, ratio: float
) -> None:
    found = stated(matrix)

    assert list(found.weights.values()) == pytest.approx(weights, abs=1e-9)
    assert found.lambda_max == pytest.approx(lambda_max, abs=1e-9)
    assert found.ratio == pytest.approx(ratio, abs=1e-8)


def test_leaving_out_one_statement_of_a_consistent_matrix_changes_nothing() -> None:
    """Harker 1987, Incomplete pairwise comparisons: a missing ratio is that of the weights found."""
    full = pair_weights([("a", "b", 2.0), ("b", "c", 3.0), ("a", "c", 6.0)])

    assert pair_weights([("a", "b", 2.0), ("b", "c", 3.0)]).weights == pytest.approx(full.weights)


def test_harkers_matrix_has_the_eigenvector_of_the_matrix_filled_from_it() -> None:
    """Harker 1987: filling each missing pair with w_i / w_j reproduces the weights found without it."""
    statements = [("a", "b", 2.0), ("b", "c", 3.0), ("c", "d", 2.0), ("a", "d", 5.0), ("a", "c", 9.0)]
    found = pair_weights(statements)

    filled = pair_weights([*statements, ("b", "d", found.weights["b"] / found.weights["d"])])

    assert filled.weights == pytest.approx(found.weights, rel=1e-9)
    assert filled.lambda_max == pytest.approx(found.lambda_max)
