from pathlib import Path

import pytest
import yaml

from spindlewise.catalog import yaml_swift, yaml_walk
from spindlewise.catalog.document import MISREAD
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.catalog.yaml_walk import DEEPEST, LONGEST_SCALAR, MOST_NODES, MOST_PROBLEMS, Walk

BAD = Path(__file__).parent / "bad"


def _walk(text: str) -> Walk:
    walk = Walk("a.yaml")
    walk.run(text)
    return walk


def test_a_refused_value_leaves_a_mark_and_its_neighbours_stand() -> None:
    walk = _walk("a: no\nb: [1, ~, x]\nc: *s\nd: !t 1\n")
    assert walk.data == {"a": MISREAD, "b": (1, MISREAD, "x"), "c": MISREAD, "d": MISREAD}
    assert [p.rule for p in walk.problems] == ["ambiguous-word", "ambiguous-word", "alias", "tag"]


def test_what_hangs_on_a_refused_key_leaves_no_data_and_no_places() -> None:
    walk = _walk("a: 1\na: {b: [x]}\n2: {c: y}\n[k]: {d: z}\n*s : w\n")
    assert walk.data == {"a": 1}
    assert sorted(map(str, walk.spots)) == ["('a',)", "()"]
    assert walk.spots["a",] == (1, 4)
    assert list(walk.key_spots) == [("a",)]


def test_an_anchored_key_and_an_anchored_list_are_still_read() -> None:
    walk = _walk("&k a: 1\nb: &l [x]\n")
    assert walk.data == {"a": 1, "b": ("x",)}
    assert [p.rule for p in walk.problems] == ["anchor", "anchor"]


@pytest.mark.parametrize("text", ["'no'", '"1:30"', "'~'", "|-\n  0777", ">-\n  1e3", "''", '"2024-01-01"'])
def test_what_stands_in_quotes_or_a_block_is_text(text: str) -> None:
    walk = _walk(f"a: {text}\n")
    assert walk.problems == []
    assert walk.data == {"a": yaml.safe_load(f"a: {text}\n")["a"]}


def test_the_deepest_allowed_passes_and_one_more_does_not() -> None:
    assert _walk("[" * DEEPEST + "]" * DEEPEST).problems == []
    assert [p.rule for p in _walk("[" * (DEEPEST + 1) + "]" * (DEEPEST + 1)).problems] == ["too-deep"]


def test_the_most_nodes_pass_and_one_more_does_not() -> None:
    most = "[" + "x," * (MOST_NODES - 1) + "]"
    assert _walk(most).whole
    more = _walk("[" + "x," * MOST_NODES + "]")
    assert ([p.rule for p in more.problems], more.whole) == (["too-many-nodes"], False)


def test_the_longest_text_passes_and_one_more_does_not() -> None:
    assert _walk("a: " + "x" * LONGEST_SCALAR).problems == []
    assert [p.rule for p in _walk("a: " + "x" * (LONGEST_SCALAR + 1)).problems] == ["too-long"]
    assert [p.rule for p in _walk("? " + "x" * (LONGEST_SCALAR + 1)).problems] == [
        "too-long",
        "missing-value",
    ]


def test_a_walk_that_stops_for_two_reasons_says_the_first() -> None:
    text = "[" * DEEPEST + "x," * (MOST_NODES - DEEPEST) + "[x]" + "]" * DEEPEST
    assert [p.rule for p in _walk(text).problems] == ["too-many-nodes"]


def test_a_value_without_its_key() -> None:
    walk = _walk("a:\n  ?\n  : x\n  b: 1\n")
    assert walk.data == {"a": {"b": 1}}
    assert [(p.rule, p.field) for p in walk.problems] == [("key-kind", "a")]


def test_reading_stops_after_the_most_problems() -> None:
    walk = _walk("- no\n" * (2 * MOST_PROBLEMS))
    assert len(walk.problems) == MOST_PROBLEMS + 1
    assert walk.problems[-1].rule == "too-many-problems"
    assert not walk.whole


@pytest.mark.parametrize("case", sorted(p.stem for p in BAD.glob("yaml-*.yaml")))
def test_the_parser_in_python_finds_what_the_parser_in_c_finds(
    case: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    raw = (BAD / f"{case}.yaml").read_bytes()
    in_c = [(p.rule, p.message) for p in read_yaml_text(raw, "a")[1]]
    for module in (yaml_walk, yaml_swift):
        monkeypatch.setattr(module, "EVENTS", yaml.SafeLoader)
    in_python = [(p.rule, p.message) for p in read_yaml_text(raw, "a")[1]]
    assert [rule for rule, _ in in_python] == [rule for rule, _ in in_c] or case in DIFFERENT


DIFFERENT = {"yaml-directive-unknown"}
"""The parser in Python passes over a directive that it does not know."""
