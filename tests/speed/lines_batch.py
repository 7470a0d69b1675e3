"""Lines of the bench about answering many questions from one file."""

import random
import time
from collections.abc import Callable

from speed.timing import ROOT, Line, by_turns, least, shown


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
