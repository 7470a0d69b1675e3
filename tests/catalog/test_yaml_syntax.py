import pytest
import yaml

from spindlewise.catalog.yaml_syntax import syntax_problem
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import Place

MISTAKES = [
    *("a: b: c", "a: 'x", "a: [1", "a: {b: 1", "a: @x", "a: ]", "- a\nb: 1", "a:\n  b: 1\n c: 2"),
    *("a: - b", "a\nb: 1", "id:plain\nb: 1", "a: 1\nfoo\n", "a: 'b' c", "a: >x\n  y", 'a: "\\q"'),
    *("a: 1\n...\nb: 2", "a: &"),
]


@pytest.mark.parametrize("text", MISTAKES)
def test_both_parsers_of_pyyaml_are_put_into_the_same_words(text: str) -> None:
    said = []
    for loader in (yaml.SafeLoader, yaml.CSafeLoader):
        with pytest.raises(yaml.MarkedYAMLError) as caught:
            list(yaml.parse(text, Loader=loader))
        problem = syntax_problem(caught.value, "a", text)
        said.append((problem.place.line if problem.place else 0, problem.message, problem.tip))
    assert said[0] == said[1]
    assert "not YAML (" not in said[0][1]


def test_what_has_no_better_words_keeps_the_parsers() -> None:
    problem = syntax_problem(yaml.YAMLError(), "a", "")
    assert problem.message == "this is not YAML (unreadable)"
    assert problem.place == Place("a", 1, 1)


@pytest.mark.parametrize(
    ("text", "column", "message"),
    [
        ("url:x\nb: 1", 5, "no space stands after the colon"),
        ("  - url:x\n    b: 1", 9, "no space stands after the colon"),
        ("https://x\nb: 1", 1, "the line does not fit the lines above it"),
    ],
)
def test_a_glued_colon_is_told_from_a_web_address(text: str, column: int, message: str) -> None:
    _, [problem] = read_yaml_text(text, "a")
    assert problem.place is not None
    assert (problem.place.column, problem.message) == (column, message)
