from pathlib import Path

import pytest

from spindlewise.catalog.document import Document
from spindlewise.catalog.forgiven import ForgivenFile, forgive
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import Level, Place, Problem

FOLDER = Path("catalog")


def _listed(text: str) -> tuple[ForgivenFile, Document]:
    document, problems = read_yaml_text(
        f"schema: spindlewise forgiven 1\nforgiven:\n{text}", "catalog/forgiven.yaml"
    )
    assert problems == []
    assert document is not None
    listed, faults = validate(ForgivenFile, document)
    assert faults == []
    assert listed is not None
    return listed, document


def _problem(
    level: Level = "warning", rule: str = "stack-basis", file: str = "a.yaml", field: str = "x"
) -> Problem:
    return Problem(Place(f"catalog/products/{file}", 3, 1), level, rule, "m", "t", field)


ALL_OF_A = "  - {rule: stack-basis, file: products/a.yaml, reason: no answer}\n"
ONE_OF_A = "  - {rule: stack-basis, file: products/a.yaml, field: x, reason: no answer}\n"


def test_a_forgiven_warning_is_gone() -> None:
    assert forgive([_problem()], *_listed(ONE_OF_A), FOLDER) == []


def test_an_entry_may_forgive_all_of_one_rule_in_one_file() -> None:
    assert forgive([_problem(), _problem(field="y")], *_listed(ALL_OF_A), FOLDER) == []
    assert len(forgive([_problem(), _problem(field="y")], *_listed(ONE_OF_A), FOLDER)) == 1


@pytest.mark.parametrize(
    "problem",
    [
        _problem(rule="weight-basis"),
        _problem(file="b.yaml"),
        _problem(field="y"),
        _problem(level="error"),
        Problem(None, "warning", "stack-basis", "m", "t", "x"),
    ],
)
def test_what_is_not_meant_stays_and_the_entry_is_told(problem: Problem) -> None:
    left = forgive([problem], *_listed(ONE_OF_A), FOLDER)
    assert left[0] == problem
    assert [(p.level, p.rule, p.field) for p in left[1:]] == [("error", "nothing-to-forgive", "forgiven[0]")]
    assert left[1].place == Place("catalog/forgiven.yaml", 3, 12)
    assert left[1].message == "forgiven[0]: no warning stack-basis in products/a.yaml to forgive"


def test_each_entry_answers_for_itself() -> None:
    left = forgive([_problem()], *_listed(ONE_OF_A + ALL_OF_A), FOLDER)
    assert left == []
    left = forgive([], *_listed(ONE_OF_A + ALL_OF_A), FOLDER)
    assert [p.field for p in left] == ["forgiven[0]", "forgiven[1]"]
