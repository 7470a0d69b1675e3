from spindlewise.fit.missing import MissingFigure, MissingFigures
from spindlewise.render.missing_figures import missing_words
from spindlewise.render.naming import Naming


def test_each_missing_figure_is_named_once_with_its_reason() -> None:
    stack = MissingFigure("heron", "stack", "the pedal is changed")
    crank = MissingFigure("gull", "crank", "the crank is changed")
    assert missing_words(MissingFigures((stack, crank, stack)), Naming({"heron": "Shore Heron"}, {})) == (
        "Not known: the stack of Shore Heron (the pedal is changed). "
        "Not known: the crank of gull (the crank is changed)."
    )
