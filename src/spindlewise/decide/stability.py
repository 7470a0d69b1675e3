"""How sure a ranking is: how often each product takes each place when weights and figures move."""

from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import partial

import numpy as np
import numpy.typing as npt

from spindlewise.decide.merit_draws import MeritLaw
from spindlewise.decide.score import SETTLED_DECIMALS, held_flags
from spindlewise.decide.table import BoolArray, FloatArray, IntArray, MeritTable
from spindlewise.decide.weight_draws import WeightLaw

DRAWS_AT_ONCE = 4000
"""Draws that share one seed. A part of the result: other chunks would be other draws."""

SCALE = 100.0 * 10.0**SETTLED_DECIMALS
"""Scores are counted in whole billionths of a point, so that what is equal on paper ties here too."""


@dataclass(frozen=True, slots=True, eq=False)
class Stability:
    """What came of `draws` draws from `seed`, for n products on m criteria; products in the table's order.

    `places` (n, n): the chance of each product (row) to take each place (column 0 is the first place).
    `first` (n,): the chance of being first; 0 for a product that a safety notice holds back.
    `beats` (n, n): the chance that the row's product stands above the column's; the diagonal is 0.
    `central_weights` (n, m): the mean of the weights under which the product is first, NaN for a product that
    never is. Chances are shares of the draws, 0 to 1; see `standard_error` for how well they are known.
    """

    products: tuple[str, ...]
    places: FloatArray
    first: FloatArray
    beats: FloatArray
    central_weights: FloatArray
    draws: int
    seed: int

    def standard_error(self, chances: npt.ArrayLike) -> FloatArray:
        """Give the standard error sqrt(p * (1 - p) / draws) of chances found, in their shape.

        It is 0 for a chance of 0 or 1, which is then, 19 times out of 20, within 3 / draws of the truth.
        """
        p = np.asarray(chances, dtype=np.float64)
        return np.asarray(np.sqrt(p * (1.0 - p) / self.draws))


@dataclass(frozen=True, slots=True, eq=False)
class _Counts:
    places: IntArray
    beats: IntArray
    first_weights: FloatArray


def stability(
    table: MeritTable,
    weights: WeightLaw,
    merits: MeritLaw | None = None,
    *,
    held_back: npt.ArrayLike | None = None,
    draws: int = 100_000,
    seed: int = 1,
    threads: int = 1,
) -> Stability:
    """Give how often each product takes each place, by simulation (SMAA-2, Lahdelma and Salminen 2001).

    Each draw takes weights from `weights` and merits from `merits` (None: all stand as expected) and puts the
    products in order: by score, equal scores by product id, held-back products after all others. The rank of
    a draw is thus a place; products are never level in it.

    The same table, laws, draws and seed give the same bytes whatever the number of threads: draws are made in
    chunks of 4,000, each with its own seed, and added up in order. ValueError for a table without products, a
    law for another number of criteria, and draws or threads below 1.
    """
    n, m = table.expected.shape
    if not n or weights.criteria != m:
        raise ValueError(
            f"a table of {n} products on {m} criteria and weights over {weights.criteria} criteria;"
            " at least one product and as many weights as criteria are needed"
        )
    if draws < 1 or threads < 1:
        raise ValueError(f"{draws} draws in {threads} threads asked for; at least 1 of each is needed")
    held = held_flags(held_back, n)
    # in this order a product never loses a tie to one further down
    order = np.array(sorted(range(n), key=lambda row: (held[row], table.products[row])), dtype=np.intp)
    count = partial(_count, table.expected, weights, merits, order, held[order])
    places = np.zeros((n, n), dtype=np.int64)
    beats = np.zeros((n, n), dtype=np.int64)
    first_weights = np.zeros((n, m))
    for counts in _each_chunk(count, draws, seed, threads):
        places += counts.places
        beats += counts.beats
        first_weights += counts.first_weights
    back = np.argsort(order)
    return _result(
        table, held, places[back], beats[np.ix_(back, back)], first_weights[back], draws=draws, seed=seed
    )


def _each_chunk(count: "partial[_Counts]", draws: int, seed: int, threads: int) -> Iterator[_Counts]:
    sizes = [DRAWS_AT_ONCE] * (draws // DRAWS_AT_ONCE)
    if draws % DRAWS_AT_ONCE:
        sizes.append(draws % DRAWS_AT_ONCE)
    seeds = np.random.SeedSequence(seed).spawn(len(sizes))
    if threads == 1:
        yield from map(count, seeds, sizes)
        return
    with ThreadPoolExecutor(threads) as pool:
        yield from pool.map(count, seeds, sizes)


def _count(
    expected: FloatArray,
    weight_law: WeightLaw,
    merit_law: MeritLaw | None,
    order: IntArray,
    held: BoolArray,
    seed: np.random.SeedSequence,
    draws: int,
) -> _Counts:
    generator = np.random.Generator(np.random.SFC64(seed))
    weights = weight_law.draw(generator, draws)
    scores = _scores(expected, weights, merit_law, generator, order)
    if held.any():
        # no score reaches twice the scale, so this puts what is held back below everything else
        scores[held] -= 2.0 * SCALE
    above, beats = _above(scores)
    n = len(order)
    cells = (np.arange(n)[:, None] * n + above).ravel()
    places = np.bincount(cells, minlength=n * n).reshape(n, n)
    # each draw has exactly one first; found row by row, they come sorted by product
    when = np.flatnonzero(above.ravel() == 0) % draws
    ever = np.flatnonzero(places[:, 0])
    starts = np.cumsum(places[ever, 0]) - places[ever, 0]
    first_weights = np.zeros((n, len(weights)))
    first_weights[ever] = np.add.reduceat(weights[:, when], starts, axis=1).T
    return _Counts(places, beats, first_weights)


def _scores(
    expected: FloatArray,
    weights: FloatArray,
    merit_law: MeritLaw | None,
    generator: np.random.Generator,
    order: IntArray,
) -> FloatArray:
    """Give the scores in whole billionths of a point, products in `order`, shape (n, draws)."""
    held = expected * SCALE
    if merit_law is None:
        scores = held[order] @ weights
        return np.rint(scores, out=scores)
    every = np.arange(len(expected))
    scores = np.zeros((len(expected), weights.shape[1]))
    for k, weight in enumerate(weights):
        found = merit_law.draw(generator, k, len(weight))
        if found is not None:
            rows, merits = found
            held[rows, k] = 0.0
            merits *= weight
            # taking all rows as they stand spares copying them there and back
            scores[slice(None) if np.array_equal(rows, every) else rows] += merits
    scores *= SCALE
    scores += held @ weights
    scores = scores[order]
    return np.rint(scores, out=scores)


def _above(scores: FloatArray) -> tuple[IntArray, IntArray]:
    """Give how many rows stand above each row in each draw, (n, draws), and who beats whom how often.

    Equal scores go to the upper row. Comparing each row with all below it costs no more than sorting every
    draw, and yields who beats whom on the way.
    """
    n, draws = scores.shape
    above = np.zeros((n, draws), dtype=np.uint8 if n <= 256 else np.uint16)
    beats = np.zeros((n, n), dtype=np.int64)
    for row in range(n - 1):
        wins = scores[row] >= scores[row + 1 :]
        above[row + 1 :] += wins.view(np.uint8)
        above[row] += above.dtype.type(n - 1 - row) - np.add.reduce(
            wins.view(np.uint8), axis=0, dtype=above.dtype
        )
        beats[row, row + 1 :] = np.bitwise_count(np.packbits(wins, axis=1)).sum(axis=1, dtype=np.int64)
        beats[row + 1 :, row] = draws - beats[row, row + 1 :]
    return above, beats


def _result(
    table: MeritTable,
    held: BoolArray,
    places: IntArray,
    beats: IntArray,
    first_weights: FloatArray,
    *,
    draws: int,
    seed: int,
) -> Stability:
    times_first = np.where(held, 0, places[:, 0])
    central = np.full(first_weights.shape, np.nan)
    ever = times_first > 0
    central[ever] = first_weights[ever] / times_first[ever, None]
    return Stability(
        table.products, places / draws, times_first / draws, beats / draws, central, draws=draws, seed=seed
    )
