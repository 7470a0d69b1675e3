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

import numpy as np

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


def least(work: Callable[[], object], rounds: int = 5, times: int = 1) -> float:
    """Seconds for one call, the least of several rounds."""
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter()
        for _ in range(times):
            work()
        best = min(best, (time.perf_counter() - start) / times)
    return best


def by_turns(
    first: Callable[[], object], second: Callable[[], object], rounds: int = 5, times: int = 1
) -> tuple[float, float]:
    """Both, taken by turns so that a disturbance meets both."""
    pair = [float("inf"), float("inf")]
    for _ in range(rounds):
        pair[0] = min(pair[0], least(first, 1, times))
        pair[1] = min(pair[1], least(second, 1, times))
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


def table_of(n: int, m: int = 12) -> tuple[object, np.ndarray, np.ndarray, object]:
    """Figures, two-knot curves and weights for n products on m criteria."""
    from spindlewise.decide.curves import Curve

    rng = np.random.default_rng(7)
    figures = rng.uniform(0, 100, (n, m))
    weights = rng.uniform(1, 10, m)
    curves = [Curve((0.0, 100.0), (0.0, 1.0) if k % 2 else (1.0, 0.0)) for k in range(m)]
    return figures, weights / weights.sum(), rng, curves


def ranking() -> list[Line]:
    """Ranking against two general decision libraries, and against plain numpy."""
    from pymcdm.methods import WSM
    from pymcdm.normalizations import minmax_normalization
    from skcriteria import mkdm
    from skcriteria.agg.simple import WeightedSumModel

    from spindlewise.decide.curves import merits_at
    from spindlewise.decide.score import ranking_order, score
    from spindlewise.decide.table import MeritTable

    lines = []
    wsm = WSM(minmax_normalization)
    for n, times in ((20, 200), (1000, 20)):
        figures, shares, _, curves = table_of(n)
        senses = np.array([1 if k % 2 else -1 for k in range(12)])
        names = tuple(f"p{i:06}" for i in range(n))
        criteria = tuple(f"c{k}" for k in range(12))
        merits = merits_at(curves, figures)

        def ours(
            figures: np.ndarray = figures,
            names: tuple[str, ...] = names,
            criteria: tuple[str, ...] = criteria,
            shares: np.ndarray = shares,
            curves: object = curves,
        ) -> object:
            read = merits_at(curves, figures)
            table = MeritTable(names, criteria, read, read, read)
            return ranking_order(names, score(table, shares).expected)

        def first(
            figures: np.ndarray = figures, shares: np.ndarray = shares, senses: np.ndarray = senses
        ) -> object:
            values = wsm(figures, shares, senses)
            return wsm.rank(values)

        def second(merits: np.ndarray = merits, shares: np.ndarray = shares) -> object:
            return WeightedSumModel().evaluate(mkdm(merits, [max] * 12, weights=shares))

        mine = least(ours, 5, times)
        a, b = least(first, 5, times), least(second, 5, max(1, times // 4))
        peer = min(a, b)
        lines.append(
            Line(
                f"ranking {n:,} products x 12",
                shown(mine),
                f"faster general library {shown(peer)}, other {shown(max(a, b))}",
                f"{peer / mine:.1f} x faster",
                "20 x faster",
            )
        )
    return lines


def ranking_many() -> list[Line]:
    """100,000 products against plain numpy."""
    from spindlewise.decide.curves import merits_at
    from spindlewise.decide.score import ranking_order, score
    from spindlewise.decide.table import MeritTable

    figures, shares, _, curves = table_of(100_000)
    names = tuple(f"p{i:06}" for i in range(100_000))
    criteria = tuple(f"c{k}" for k in range(12))
    low, span = np.zeros(12), np.full(12, 100.0)
    merits = merits_at(curves, figures)
    table = MeritTable(names, criteria, merits, merits, merits)

    def plain() -> object:
        scaled = (figures - low) / span
        return np.argsort(-(scaled @ shares))

    def ours() -> object:
        return ranking_order(names, score(table, shares).expected)

    def whole() -> object:
        read = merits_at(curves, figures)
        return ranking_order(names, score(MeritTable(names, criteria, read, read, read), shares).expected)

    mine, bound = by_turns(ours, plain, 9)
    all_of_it, again = by_turns(whole, plain, 9)
    against = f"numpy: scale, product, argsort {shown(bound)}"
    return [
        Line(
            "scoring and ordering 100,000 x 12, merits at hand",
            shown(mine),
            against,
            f"{mine / bound:.2f}",
            "1.2",
        ),
        Line(
            "the same from raw figures, checked",
            shown(all_of_it),
            f"numpy {shown(again)}",
            f"{all_of_it / again:.2f}",
            "1.2",
        ),
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
    asked = Questions(("\n".join(lines) + "\n").encode(), "q.csv", catalog, bases)
    questions = [item for item in asked if isinstance(item, Question)]
    names = naming(catalog)

    def answer(count: int) -> Callable[[], object]:
        def work() -> None:
            desk = Desk(catalog)
            for question in questions[:count]:
                brief_text(catalog, brief(desk, question.buyer), names)

        return work

    tenth, whole = least(answer(1000), 3), least(answer(10_000), 2)
    return [
        Line(
            "10,000 batch answers, computed and rendered as text",
            shown(whole),
            f"1,000 of them {shown(tenth)}",
            f"{10_000 / whole:,.0f} a second; {whole / tenth / 10:.2f} of linear",
            "2,000 a second",
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
