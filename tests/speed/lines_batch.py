"""Lines of the bench about answering many questions from one file."""

import random
import time
from collections.abc import Callable

from speed.timing import ROOT, Line, by_turns, command, least, shown, workshop


def asked(count: int, buyers: list[str]) -> list[str]:
    """So many questions as lines of a form, each with weights and a budget of its own."""
    dice = random.Random(1)  # a benchmark's questions, no secret
    lines = ["id,buyer,weights,budget"]
    for i in range(count):
        stated = ";".join(
            f"{k}={dice.randint(1, 50)}" for k in ("price", "weight", "reading_uncertainty", "running_time")
        )
        lines.append(f"q{i},{dice.choice(buyers)},{stated},{dice.randint(300, 1300)}")
    return lines


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
    lines = asked(10_000, sorted(bases))
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


def large_batch() -> list[Line]:
    """A hundred thousand questions by one command, against a fifth of them: in the same memory."""
    buyers = sorted(path.stem for path in (ROOT / "catalog" / "buyers").glob("*.yaml"))
    found = []
    for count in (20_000, 100_000):
        path = workshop() / f"questions-{count}.csv"
        path.write_text("\n".join(asked(count, buyers)) + "\n", "utf-8")
        found.append(command("--catalog", str(ROOT / "catalog"), "answer", "--batch", str(path))())
    few, many = found
    return [
        Line(
            "`answer --batch` of 100,000 questions, whole process",
            f"{shown(many.seconds)}, {many.memory_mib:.0f} MiB",
            f"20,000 of them {shown(few.seconds)}, {few.memory_mib:.0f} MiB",
            f"{100_000 / many.seconds:,.0f} a second; {many.seconds / few.seconds:.2f} x the time, "
            f"{many.memory_mib / few.memory_mib:.2f} x the memory",
            "5 x, 1 x",
        )
    ]


def scoring() -> list[Line]:
    """Scoring alone: a hundred thousand weightings of the demo's products, one by one, to their order."""
    import numpy as np

    from spindlewise.answer.asking import open_buyers
    from spindlewise.answer.desk import Desk
    from spindlewise.answer.ranking import rank
    from spindlewise.catalog.opening import open_catalog
    from spindlewise.decide.score import ranking_order, score

    catalog, _ = open_catalog(ROOT / "catalog")
    if catalog is None:
        raise SystemExit("the demo catalog has errors")
    buyers, _ = open_buyers(ROOT / "catalog" / "buyers", catalog)
    table = rank(Desk(catalog), buyers["club-racer"]).table
    weights = np.random.default_rng(1).uniform(1, 50, (20_000, len(table.criteria)))

    def scored() -> None:
        for each in weights:
            score(table, each)

    def ordered() -> None:
        for each in weights:
            ranking_order(table.products, score(table, each).expected)

    alone, whole = by_turns(scored, ordered, 4, clock=time.process_time)
    many = len(weights)
    size = f"{len(table.products)} x {len(table.criteria)}"
    return [
        Line(
            f"scoring {size} for one question after another, low, expected and high",
            shown(alone / many),
            f"with the order {shown(whole / many)}",
            f"{many / alone:,.0f} a second",
            "100,000 a second",
        )
    ]
