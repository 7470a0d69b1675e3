"""Lines of the bench about deciding: rankings, simulated worlds and the undominated set, in numpy alone."""

import time
from typing import TYPE_CHECKING

import numpy as np

from speed.timing import Line, by_turns, least, shown

if TYPE_CHECKING:
    from spindlewise.decide.curves import Curve


def table_of(n: int, m: int = 12) -> tuple[np.ndarray, np.ndarray, list["Curve"], tuple[str, ...]]:
    """Figures, weights, two-knot curves and ids for n products on m criteria."""
    from spindlewise.decide.curves import Curve

    rng = np.random.default_rng(7)
    figures = rng.uniform(0, 100, (n, m))
    weights = rng.uniform(1, 10, m)
    curves = [Curve((0.0, 100.0), (0.0, 1.0) if k % 2 else (1.0, 0.0)) for k in range(m)]
    return figures, weights / weights.sum(), curves, tuple(f"p{i:06}" for i in range(n))


def ranking() -> list[Line]:
    """One ranking from raw figures and weights, against two general decision libraries.

    All objects that a caller keeps (ours: curves and ids; theirs: the method or pipeline) are made before.
    Each call then takes figures and weights and gives an order. Ours checks both every time; the first
    library's own checks are switched off, as its documentation offers (with them it takes twice as long for
    20 products and eight times for 1,000); the second has no such switch. Both scale by min and max, as they
    have no fixed scale.
    """
    from pymcdm.methods import WSM
    from pymcdm.normalizations import minmax_normalization
    from skcriteria import mkdm
    from skcriteria.agg.simple import WeightedSumModel
    from skcriteria.pipelines import mkpipe
    from skcriteria.preprocessing.invert_objectives import NegateMinimize
    from skcriteria.preprocessing.scalers import MinMaxScaler

    from spindlewise.decide.fixed_scale import FixedScale

    lines = []
    wsm = WSM(minmax_normalization)
    pipe = mkpipe(NegateMinimize(), MinMaxScaler(target="matrix"), WeightedSumModel())
    for n, times in ((20, 500), (1000, 50)):
        figures, weights, curves, ids = table_of(n)
        senses = [1 if k % 2 else -1 for k in range(12)]
        scale, signs = FixedScale(ids, curves), np.array(senses)

        def ours(scale: FixedScale = scale, f: np.ndarray = figures, w: np.ndarray = weights) -> object:
            return scale.order(f, w)

        def first(f: np.ndarray = figures, w: np.ndarray = weights, signs: np.ndarray = signs) -> object:
            return wsm.rank(wsm(f, w, signs, validation=False))

        def second(f: np.ndarray = figures, w: np.ndarray = weights, senses: list[int] = senses) -> object:
            return pipe.evaluate(mkdm(f, senses, weights=w))

        mine, one = by_turns(ours, first, 15, times, time.process_time)
        again, other = by_turns(ours, second, 7, max(1, times // 25), time.process_time)
        peer, mine = min(one, other), min(mine, again)
        lines.append(
            Line(
                f"ranking {n:,} products x 12 from raw figures",
                shown(mine),
                f"faster general library {shown(peer)}, other {shown(max(one, other))}",
                f"{peer / mine:.1f} x faster",
                "20 x faster",
            )
        )
    return lines


def ranking_many() -> list[Line]:
    """100,000 products from raw figures to their order, against plain numpy, which checks nothing."""
    from spindlewise.decide.fixed_scale import FixedScale

    figures, weights, curves, ids = table_of(100_000)
    low, span = np.zeros(12), np.full(12, 100.0)
    scale = FixedScale(ids, curves)
    signed = np.where(np.arange(12) % 2, -weights, weights)

    def plain() -> object:
        scaled = (figures - low) / span
        return np.argsort(scaled @ signed)

    def ours() -> object:
        return scale.order(figures, weights)

    if not np.array_equal(plain(), ours()):
        raise SystemExit("both should give the same order of these figures")
    mine, bound = by_turns(ours, plain, 25, clock=time.process_time)
    return [
        Line(
            "ordering 100,000 x 12 from raw figures, checked",
            shown(mine),
            f"numpy: scale, product, argsort {shown(bound)}",
            f"{mine / bound:.2f}",
            "1.2",
        )
    ]


def simulation() -> list[Line]:
    """A million worlds against drawing, matrix product and argsort alone."""
    from spindlewise.decide.merit_draws import NORMAL, SpreadMerits
    from spindlewise.decide.stability import stability
    from spindlewise.decide.table import MeritTable
    from spindlewise.decide.weight_draws import AroundShares

    rng = np.random.default_rng(5)
    n, m, draws, at_once = 20, 12, 1_000_000, 4000
    expected = rng.uniform(0.2, 0.8, (n, m))
    names = tuple(f"p{i:02}" for i in range(n))
    criteria = tuple(f"c{k}" for k in range(m))
    shares = rng.uniform(1, 3, m)
    held = MeritTable(names, criteria, expected, expected, expected)
    loose = MeritTable(names, criteria, expected - 0.05, expected, expected + 0.05)
    law = AroundShares(tuple(shares / shares.sum()), 63.0)
    alphas = 63.0 * shares / shares.sum()

    def bound() -> None:
        generator = np.random.Generator(np.random.SFC64(1))
        for _ in range(draws // at_once):
            weights = generator.standard_gamma(alphas, (at_once, m))
            weights /= weights.sum(axis=1, keepdims=True)
            np.argsort(weights @ expected.T, axis=1)

    def normals() -> None:
        generator = np.random.Generator(np.random.SFC64(1))
        for _ in range(draws // at_once):
            generator.standard_normal((at_once, n * m))

    mine, other = by_turns(lambda: stability(held, law, draws=draws), bound, 3, clock=time.process_time)
    merits = SpreadMerits(loose, np.full((n, m), NORMAL, dtype=np.int8))
    looped = [one_weighting(expected, shares) for _ in range(3)]
    quick, slow = (min(each) for each in zip(*looped, strict=True))
    drawn, least_of = by_turns(
        lambda: stability(loose, law, merits, draws=draws), normals, 2, clock=time.process_time
    )
    return [
        Line(
            "a million weightings over 20 products",
            shown(mine),
            f"draw, product, argsort {shown(other)}",
            f"{mine / other:.2f}",
            "1.5",
        ),
        Line(
            "a million weightings over 20 products",
            shown(mine),
            f"looping general libraries {shown(quick * draws)} and {shown(slow * draws)}",
            f"{quick * draws / mine:,.0f} x and {slow * draws / mine:,.0f} x faster",
            "1,000 x faster",
        ),
        Line(
            "the same with all 240 figures drawn",
            shown(drawn),
            f"drawing those normals {shown(least_of)}",
            f"{drawn / least_of:.2f}",
            "2",
        ),
    ]


def one_weighting(expected: np.ndarray, shares: np.ndarray) -> tuple[float, float]:
    """Seconds that two general libraries take for one weighting of the same table, the quicker first."""
    from pymcdm.methods import WSM
    from skcriteria import mkdm
    from skcriteria.agg.simple import WeightedSumModel

    wsm, model, senses = WSM(), WeightedSumModel(), [1] * expected.shape[1]
    signs = np.array(senses)
    one = least(
        lambda: wsm.rank(wsm(expected, shares / shares.sum(), signs, validation=False)),
        3,
        300,
        time.process_time,
    )
    other = least(lambda: model.evaluate(mkdm(expected, senses, weights=shares)), 3, 30, time.process_time)
    return min(one, other), max(one, other)


def spread_points(n: int) -> np.ndarray:
    """Points of four merits, each drawn for itself."""
    return np.random.default_rng(3).random((n, 4))


def opposed_points(n: int) -> np.ndarray:
    """Points of four merits that are bought with one another: near a plane of equal sum.

    As skyline papers draw them (Boerzsoenyi, Kossmann and Stocker 2001): a sum, normal about its middle, is
    shared out at random.
    """
    rng = np.random.default_rng(3)
    total = np.clip(rng.normal(0.5, 0.05, (n, 1)), 0, 1) * 4
    shares = rng.random((n, 4))
    return np.clip(shares / shares.sum(axis=1, keepdims=True) * total, 0, 1)


def skyline() -> list[Line]:
    """The undominated of 100,000 in four criteria, against a skyline library with and without numba."""
    from paretoset import paretoset

    from spindlewise.decide.dominance import undominated

    lines = []
    for what, points in (("spread", spread_points(100_000)), ("opposed", opposed_points(100_000))):

        def ours(points: np.ndarray = points) -> np.ndarray:
            return undominated(points)

        def theirs(compiled: bool, points: np.ndarray = points) -> np.ndarray:
            return paretoset(points, sense=["max"] * 4, use_numba=compiled)

        if not np.array_equal(ours(), theirs(True)):  # it is compiled here too, before the clock runs
            raise SystemExit("both should find the same products undominated")
        slow = least(lambda theirs=theirs: theirs(False), 1, clock=time.process_time)
        mine, peer = by_turns(ours, lambda theirs=theirs: theirs(True), 7, clock=time.process_time)
        told = f"undominated of 100,000 x 4, {what}"
        lines += [
            Line(
                told,
                shown(mine),
                f"skyline library without its compiler {shown(slow)}",
                f"{mine / slow:.2f}",
                "below 1",
            ),
            Line(
                told,
                shown(mine),
                f"with its compiler {shown(peer)}",
                f"{mine / peer:.2f}",
                "below 1" if what == "opposed" else "none",
            ),
        ]
    return lines
