"""`make bench`: one table of ratios, ours against a bound or a peer, taken in one run. Nothing is asserted.

Each pair is timed by turns and the least of several rounds counts, since only disturbances add to it.
Run as a program: `python tests/speed/bench.py [--write]`; --write puts the table into DEVELOPERS.md.
"""

import platform
import random
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from spindlewise.decide.curves import Curve

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests"))
PYTHON = sys.executable


@dataclass(frozen=True)
class Line:
    """One line of the table; `ratio` is ours over the bound, or the peer over ours where `faster`."""

    what: str
    ours: str
    against: str
    ratio: str
    target: str


def least(
    work: Callable[[], object],
    rounds: int = 5,
    times: int = 1,
    clock: Callable[[], float] = time.perf_counter,
) -> float:
    """Seconds for one call, the least of several rounds."""
    best = float("inf")
    for _ in range(rounds):
        start = clock()
        for _ in range(times):
            work()
        best = min(best, (clock() - start) / times)
    return best


def by_turns(
    first: Callable[[], object],
    second: Callable[[], object],
    rounds: int = 5,
    times: int = 1,
    clock: Callable[[], float] = time.perf_counter,
) -> tuple[float, float]:
    """Both, taken by turns so that a disturbance meets both."""
    pair = [float("inf"), float("inf")]
    for _ in range(rounds):
        pair[0] = min(pair[0], least(first, 1, times, clock))
        pair[1] = min(pair[1], least(second, 1, times, clock))
    return pair[0], pair[1]


def shown(seconds: float) -> str:
    """Seconds in the unit that reads best."""
    if seconds >= 1:
        return f"{seconds:.2f} s"
    return f"{seconds * 1e3:.2f} ms" if seconds >= 1e-3 else f"{seconds * 1e6:.0f} us"


def process(*arguments: str) -> Callable[[], object]:
    """A whole process."""
    return lambda: subprocess.run(arguments, cwd=ROOT, capture_output=True, check=False)


def commands() -> list[Line]:
    """Whole processes against a bare typer program and against importing pandas."""
    bare = (
        "import typer\napp = typer.Typer()\n@app.command()\ndef a(x: int = 1): pass\n@app.command()\n"
        "def b(): pass\napp()"
    )
    run = "from spindlewise.cli.main import run; run()"
    ours, peer = by_turns(process(PYTHON, "-c", run, "--help"), process(PYTHON, "-c", bare, "--help"), 7)
    lines = [
        Line("`--help`, whole process", shown(ours), f"bare typer {shown(peer)}", f"{ours / peer:.2f}", "2.5")
    ]
    for words in (
        ["rank", "--buyer", "club-racer"],
        ["swap", "lommerside-lethery", "brellowick-ferrowen-2"],
        ["ladder", "--buyer", "hill-counter"],
    ):
        whole = process(PYTHON, "-c", run, *words)
        ours, peer = by_turns(whole, process(PYTHON, "-c", "import pandas"), 5)
        lines.append(
            Line(
                f"`{words[0]}` on the demo, whole process",
                shown(ours),
                f"import pandas {shown(peer)}",
                f"{ours / peer:.2f}",
                "1",
            )
        )
    return lines


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

        mine, one = by_turns(ours, first, 15, times)
        again, other = by_turns(ours, second, 7, max(1, times // 25))
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
    mine, bound = by_turns(ours, plain, 25)
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

    mine, other = by_turns(lambda: stability(held, law, draws=draws), bound, 3)
    merits = SpreadMerits(loose, np.full((n, m), NORMAL, dtype=np.int8))
    drawn, least_of = by_turns(lambda: stability(loose, law, merits, draws=draws), normals, 2)
    return [
        Line(
            "a million weightings over 20 products",
            shown(mine),
            f"draw, product, argsort {shown(other)}",
            f"{mine / other:.2f}",
            "1.5",
        ),
        Line(
            "the same with all 240 figures drawn",
            shown(drawn),
            f"drawing those normals {shown(least_of)}",
            f"{drawn / least_of:.2f}",
            "2",
        ),
    ]


def batch() -> list[Line]:
    """Ten thousand questions with weights and budgets of their own, as brief texts, on one core."""
    from spindlewise.answer.asking import open_buyers
    from spindlewise.answer.batch import Question, Questions
    from spindlewise.answer.brief import brief
    from spindlewise.answer.desk import Desk
    from spindlewise.catalog.opening import open_catalog
    from spindlewise.render.naming import naming
    from spindlewise.render.words_brief import brief_text

    catalog, _ = open_catalog(ROOT / "catalog")
    if catalog is None:
        raise SystemExit("the demo catalog has errors")
    bases, _ = open_buyers(ROOT / "catalog" / "buyers", catalog)
    dice, ids = random.Random(1), sorted(bases)  # a benchmark's questions, no secret
    lines = ["id,buyer,weights,budget"]
    for i in range(10_000):
        stated = ";".join(
            f"{k}={dice.randint(1, 50)}" for k in ("price", "weight", "reading_uncertainty", "running_time")
        )
        lines.append(f"q{i},{dice.choice(ids)},{stated},{dice.randint(300, 1300)}")
    raw, names = ("\n".join(lines) + "\n").encode(), naming(catalog)

    def read() -> list[Question]:
        asked = Questions(raw, "q.csv", catalog, bases)
        return [item for item in asked if isinstance(item, Question)]

    questions = read()

    def answer(count: int) -> Callable[[], object]:
        def work() -> None:
            desk = Desk(catalog)  # so that what is worked out once counts too
            for question in questions[:count]:
                brief_text(catalog, brief(desk, question.buyer), names)

        return work

    # a rate for one core: seconds of the processor, which other programs do not take part in
    half, whole = by_turns(answer(5_000), answer(10_000), 4, clock=time.process_time)
    reading = least(read, 2, clock=time.process_time)
    return [
        Line(
            "10,000 batch answers, computed and rendered as text",
            shown(whole),
            f"5,000 of them {shown(half)}; reading the questions {shown(reading)} more",
            f"{10_000 / whole:,.0f} a second; {whole / half:.2f} x for twice as many",
            "2,000 a second, 2 x",
        )
    ]


GROUPS = (commands, ranking, ranking_many, simulation, batch)


def main(words: list[str]) -> None:
    """Print the table; with --write put it into DEVELOPERS.md too."""
    wanted = [word for word in words if not word.startswith("-")]
    lines = [line for group in GROUPS if not wanted or group.__name__ in wanted for line in group()]
    head = ["| what | ours | against | ratio | target |", "|---|---|---|---|---|"]
    rows = [f"| {x.what} | {x.ours} | {x.against} | {x.ratio} | {x.target} |" for x in lines]
    table = "\n".join([*head, *rows])
    said = f"Python {platform.python_version()}, numpy {np.__version__}, {platform.machine()}.\n\n{table}\n"
    print(said)
    if "--write" in words:
        page = ROOT / "DEVELOPERS.md"
        text = page.read_text("utf-8")
        mark = "<!-- bench -->"
        page.write_text(text[: text.index(mark) + len(mark)] + "\n\n" + said, "utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
