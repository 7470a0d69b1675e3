"""Weights from statements such as "price matters twice as much as weight", and how well these agree."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from spindlewise.decide.table import FloatArray

Statement: TypeAlias = tuple[str, str, float]
"""The first criterion matters so many times as much as the second."""

RANDOM_INDEX = {1: 0.0, 2: 0.0, 3: 0.58, 4: 0.90, 5: 1.12, 6: 1.24, 7: 1.32, 8: 1.41, 9: 1.45, 10: 1.49}
"""Mean consistency index of random reciprocal matrices by number of criteria (Saaty 1980)."""

SPREAD = 1e6
"""No criterion can be said to matter more than so many times as much as another."""

AGREEMENT = 1e-9
"""A statement whose logarithm lies no further than this from the weights agrees with them."""


@dataclass(frozen=True, slots=True)
class Contradiction:
    """The statement that the others contradict most.

    `times` is what it says and `fits` what the other statements, without it, say of the same two criteria.
    `deviation` is |ln(times * w_than / w_more)|: by how much it is off the weights found from all statements.
    """

    more: str
    than: str
    times: float
    fits: float
    deviation: float


@dataclass(frozen=True, slots=True)
class PairWeights:
    """Weights that add up to 1, by criterion in alphabetical order, and how far the statements agree.

    `lambda_max` is the principal eigenvalue of the matrix of statements, n or more; `index` the consistency
    index (lambda_max - n) / (n - 1). `ratio` is the index against that of random statements; by custom up to
    0.10 is tolerable (Saaty 1980). It is None for more than 10 criteria and where not all pairs are stated,
    the random index being known for neither. `contradiction` is None where no statement contradicts others.
    """

    weights: dict[str, float]
    complete: bool
    lambda_max: float
    index: float
    ratio: float | None
    contradiction: Contradiction | None


def pair_weights(statements: Sequence[Statement]) -> PairWeights:
    """Give the weights that a buyer's pairwise statements come to, and the statement that fits them least.

    Weights are the principal eigenvector of the reciprocal matrix (Saaty 1977, A scaling method for
    priorities in hierarchical structures); pairs that nobody stated are filled by Harker's rule: 0 off the
    diagonal, 1 plus their number on it (Harker 1987, Incomplete pairwise comparisons). The result does not
    depend on the order of the statements.

    Raises ValueError listing every fault: no statement at all, a criterion compared with itself, a factor
    that is not between a millionth and a million, a pair stated twice, and groups of criteria that no
    statement connects.

    >>> found = pair_weights([("price", "weight", 2.0), ("weight", "stack", 3.0), ("price", "stack", 6.0)])
    >>> {name: round(weight, 6) for name, weight in found.weights.items()}
    {'price': 0.6, 'stack': 0.1, 'weight': 0.3}
    >>> found.complete, found.contradiction
    (True, None)
    """
    _refuse(statements)
    names = sorted({name for first, second, _ in statements for name in (first, second)})
    n = len(names)
    weights, lambda_max = _principal(names, statements)
    complete = len(statements) == n * (n - 1) // 2
    index = max(0.0, (lambda_max - n) / (n - 1))
    ratio = None
    if complete and n in RANDOM_INDEX:
        ratio = index / RANDOM_INDEX[n] if RANDOM_INDEX[n] else 0.0
    shares = dict(zip(names, map(float, weights), strict=True))
    contradiction = _worst(names, statements, shares)
    return PairWeights(shares, complete, lambda_max, index, ratio, contradiction)


def _principal(names: Sequence[str], statements: Sequence[Statement]) -> tuple[FloatArray, float]:
    row = {name: i for i, name in enumerate(names)}
    matrix = np.zeros((len(names), len(names)))
    for first, second, times in statements:
        matrix[row[first], row[second]] = times
        matrix[row[second], row[first]] = 1.0 / times
    # Harker: each pair of a row that nobody stated adds 1 to its diagonal, which itself counts 1
    np.fill_diagonal(matrix, len(names) - np.count_nonzero(matrix, axis=1))
    values, vectors = np.linalg.eig(matrix)
    greatest = int(np.argmax(values.real))
    vector = np.abs(vectors[:, greatest].real)
    return vector / math.fsum(vector), float(values[greatest].real)


def _worst(
    names: Sequence[str], statements: Sequence[Statement], weights: dict[str, float]
) -> Contradiction | None:
    def deviation(statement: Statement) -> float:
        more, than, times = statement
        return abs(math.log(times * weights[than] / weights[more]))

    off = [each for each in statements if deviation(each) > AGREEMENT]
    # rounded, so that statements that are off equally far are taken by name
    off.sort(key=lambda each: (-round(deviation(each), 9), each))
    # what alone ties a criterion to the others cannot be contradicted by them
    without = ((each, [other for other in statements if other is not each]) for each in off)
    answered = ((each, others) for each, others in without if len(_groups(names, others)) == 1)
    worst, others = next(answered, (None, []))
    if worst is None:
        return None
    more, than, times = worst
    found, _ = _principal(names, others)
    fits = float(found[names.index(more)] / found[names.index(than)])
    return Contradiction(more, than, times, fits, deviation(worst))


def _groups(names: Sequence[str], statements: Sequence[Statement]) -> list[list[str]]:
    """Give the groups of criteria that statements connect, each sorted, in order of their first names."""
    group = {name: {name} for name in names}
    for first, second, _ in statements:
        if group[first] is not group[second]:
            joined = group[first] | group[second]
            group.update(dict.fromkeys(joined, joined))
    return sorted(
        sorted(members) for members in {id(members): members for members in group.values()}.values()
    )


def _refuse(statements: Sequence[Statement]) -> None:
    if not statements:
        raise ValueError(
            "no statements given; state at least how much more one criterion matters than another"
        )
    faults = []
    said: dict[tuple[str, str], list[str]] = {}
    for first, second, times in statements:
        words = f"{first} {times:g} times {second}"
        if first == second:
            faults.append(f"{first} is compared with itself")
        else:
            said.setdefault((min(first, second), max(first, second)), []).append(words)
        if not 1.0 / SPREAD <= times <= SPREAD:
            faults.append(f"{words}: the factor lies between a millionth and a million")
    for (first, second), words_of_pair in said.items():
        if len(words_of_pair) > 1:
            faults.append(f"{first} and {second} are compared more than once ({', '.join(words_of_pair)})")
    groups = _groups(sorted({name for each in statements for name in each[:2]}), statements)
    if len(groups) > 1:
        apart = " | ".join(", ".join(group) for group in groups)
        faults.append(f"no statement connects these groups: {apart}")
    if faults:
        raise ValueError("; ".join(faults))
