"""Twin of catalog/checks/registry.py: every rule beside it is listed, explained and tested."""

import ast
import importlib
import inspect
from pathlib import Path

import pytest

from spindlewise.catalog.checks import registry

ROOM = Path(registry.__file__).parent
RULES = sorted(path.stem for path in ROOM.glob("*.py") if path.stem not in ("__init__", "registry"))


def test_every_rule_beside_it_is_listed_once() -> None:
    listed = [check.__module__.rpartition(".")[2] for check in registry.CHECKS]
    assert sorted(listed) == RULES
    assert len(set(registry.CHECKS)) == len(registry.CHECKS) >= 20


@pytest.mark.parametrize("rule", RULES)
def test_a_rules_docstring_names_it_and_shows_what_passes_and_what_fails(rule: str) -> None:
    said = importlib.import_module(f"spindlewise.catalog.checks.{rule}").__doc__ or ""
    name, colon, meaning = said.partition(": ")
    assert name == rule.replace("_", "-")
    assert colon
    assert meaning.splitlines()[0].endswith(".")
    assert "\nPASS: " in said
    assert "\nFAIL: " in said


@pytest.mark.parametrize("rule", RULES)
def test_a_rule_says_its_own_name_only(rule: str) -> None:
    text = (ROOM / f"{rule}.py").read_text("utf-8")
    names = {other.replace("_", "-") for other in RULES}
    said = {
        node.value
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value in names
    }
    assert said == {rule.replace("_", "-")}
    assert (Path(__file__).parent / f"test_{rule}.py").is_file()


def test_what_a_question_is_spared_are_warnings_alone() -> None:
    for check in registry.WARNINGS_ALONE:
        assert check in registry.CHECKS
        text = Path(inspect.getfile(check)).read_text("utf-8")
        assert text.count("yield at_") == text.count(', "warning")') > 0
