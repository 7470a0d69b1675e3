"""How sure a ranking is: how often each product takes each place when weights and figures move."""

from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from functools import cached_property, partial
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from spindlewise.decide.merit_draws import MeritLaw
from spindlewise.decide.score import SETTLED_DECIMALS, held_flags
from spindlewise.decide.table import BoolArray, FloatArray, IntArray, MeritTable
from spindlewise.decide.weight_draws import WeightLaw

T = TypeVar("T")

DRAWS_AT_ONCE = 4000
"""Draws that share one seed. A part of the result: other chunks would be other draws."""

SCALE = 100.0 * 10.0**SETTLED_DECIMALS
"""Scores are counted in whole billionths of a point, so that what is equal on paper ties here too."""


@dataclass(frozen=True, eq=False)
class Stability:
    """What came of `draws` draws from `seed`, for n products on m criteria; products in the table's order.

    `places` (n, n): the chance of each product (row) to take each place (column 0 is the first place).
    `first` (n,): the chance of being first; 0 for a product that a safety notice holds back.
    `central_weights` (n, m): the mean of the weights under which the product is first, NaN for a product that
    never is. Chances are shares of the draws, 0 to 1; see `standard_error` for how well they are known.
    """

    products: tuple[str, ...]
    places: FloatArray
    first: FloatArray
    central_weights: FloatArray
    draws: int
    seed: int
    count_beats: Callable[[], FloatArray] = field(repr=False)
    """Makes the same draws again and counts who beats whom in them."""

    @cached_property
    def beats(self) -> FloatArray:
        """The chance (n, n) that the row's product stands above the column's; the diagonal is 0.

        Every pair in every draw is more work than the places, and few ask: it is counted when somebody does.
        """
        return self.count_beats()

    def standard_error(self, chances: npt.ArrayLike) -> FloatArray:
        """Give the standard error sqrt(p * (1 - p) / draws) of chances found, in their shape.

        It is 0 for a chance of 0 or 1, which is then, 19 times out of 20, within 3 / draws of the truth.
        """
        p = np.asarray(chances, dtype=np.float64)
        return np.asarray(np.sqrt(p * (1.0 - p) / self.draws))


@dataclass(frozen=True, slots=True, eq=False)
class _Counts:
    places: IntArray
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
    draw = partial(_draw, table.expected, weights, merits, order, held[order])
    places = np.zeros((n, n), dtype=np.int64)
    first_weights = np.zeros((n, m))
    for counts in _each_chunk(partial(_count, draw), draws, seed, threads):
        places += counts.places
        first_weights += counts.first_weights
    back = np.argsort(order)

    def count_beats() -> FloatArray:
        beats = sum(
            _each_chunk(partial(_beats, draw), draws, seed, threads), np.zeros((n, n), dtype=np.int64)
        )
        return np.asarray(beats[np.ix_(back, back)] / draws)

    return _result(table, held, places[back], first_weights[back], count_beats, draws=draws, seed=seed)


def _each_chunk(count: "partial[T]", draws: int, seed: int, threads: int) -> Iterator[T]:
    sizes = [DRAWS_AT_ONCE] * (draws // DRAWS_AT_ONCE)
    if draws % DRAWS_AT_ONCE:
        sizes.append(draws % DRAWS_AT_ONCE)
    seeds = np.random.SeedSequence(seed).spawn(len(sizes))
    if threads == 1:
        yield from map(count, seeds, sizes)
        return
    with ThreadPoolExecutor(threads) as pool:
        yield from pool.map(count, seeds, sizes)


def _draw(
    expected: FloatArray,
    weight_law: WeightLaw,
    merit_law: MeritLaw | None,
    order: IntArray,
    held: BoolArray,
    seed: np.random.SeedSequence,
    draws: int,
) -> tuple[FloatArray, FloatArray]:
    """Give weights (m, draws) and the scores under them, products in `order`, (n, draws)."""
    generator = np.random.Generator(np.random.SFC64(seed))
    weights = weight_law.draw(generator, draws)
    scores = _scores(expected, weights, merit_law, generator, order)
    if held.any():
        # no score reaches twice the scale, so this puts what is held back below everything else
        scores[held] -= 2.0 * SCALE
    return weights, scores


def _count(
    draw: "partial[tuple[FloatArray, FloatArray]]", seed: np.random.SeedSequence, draws: int
) -> _Counts:
    weights, scores = draw(seed, draws)
    n = len(scores)
    by_place = _by_place(scores)
    # each draw has exactly one first; sorted by product, equal ones in the order of the draws
    first = by_place[:, 0].astype(np.min_scalar_type(n))  # in few bytes, which sort at once
    when = np.argsort(first, kind="stable")
    by_place *= n
    by_place += np.arange(n)
    places = np.bincount(by_place.ravel(), minlength=n * n).reshape(n, n)
    ever = np.flatnonzero(places[:, 0])
    starts = np.cumsum(places[ever, 0]) - places[ever, 0]
    first_weights = np.zeros((n, len(weights)))
    first_weights[ever] = np.add.reduceat(weights[:, when], starts, axis=1).T
    return _Counts(places, first_weights)


def _by_place(scores: FloatArray) -> IntArray:
    """Give the row that takes each place of each draw, (draws, n); of equal scores the upper row goes first.

    A score and its row make one whole number, so that plain sorting puts both in order at once: a score has
    no more than 39 bits of the 63.
    """
    n = len(scores)
    bits = (n - 1).bit_length()
    keys = np.empty(scores.T.shape, dtype=np.int64)
    np.copyto(keys, scores.T, casting="unsafe")
    np.negative(keys, out=keys)
    keys <<= bits
    keys += np.arange(n)
    keys.sort(axis=1)
    keys &= (1 << bits) - 1
    return keys


def _beats(
    draw: "partial[tuple[FloatArray, FloatArray]]", seed: np.random.SeedSequence, draws: int
) -> IntArray:
    """Give in how many draws each row stands above each other, (n, n); equal scores go to the upper row."""
    scores = draw(seed, draws)[1]
    n = len(scores)
    beats = np.zeros((n, n), dtype=np.int64)
    for row in range(n - 1):
        wins = np.packbits(scores[row] >= scores[row + 1 :], axis=1)
        beats[row, row + 1 :] = np.bitwise_count(wins).sum(axis=1, dtype=np.int64)
        beats[row + 1 :, row] = draws - beats[row, row + 1 :]
    return beats


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


def _result(
    table: MeritTable,
    held: BoolArray,
    places: IntArray,
    first_weights: FloatArray,
    count_beats: Callable[[], FloatArray],
    *,
    draws: int,
    seed: int,
) -> Stability:
    times_first = np.where(held, 0, places[:, 0])
    central = np.full(first_weights.shape, np.nan)
    ever = times_first > 0
    central[ever] = first_weights[ever] / times_first[ever, None]
    return Stability(
        table.products,
        places / draws,
        times_first / draws,
        central,
        draws=draws,
        seed=seed,
        count_beats=count_beats,
    )
