"""The swift reading gives what the walk gives, or leaves the text to it."""

from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from spindlewise.catalog import yaml_swift
from spindlewise.catalog.yaml_swift import read_swift
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.catalog.yaml_walk import DEEPEST, LONGEST_SCALAR, Walk

HERE = Path(__file__).parent
DEMO = sorted((HERE.parents[1] / "catalog").rglob("*.yaml"))
BAD = sorted((HERE / "bad").rglob("*.yaml"))


def walked(text: str) -> Walk | None:
    """The walk over the text, if it finds nothing wrong."""
    walk = Walk("a.yaml")
    try:
        walk.run(text)
    except Exception:  # it is no YAML
        return None
    return None if walk.problems else walk


def nested(levels: int) -> str:
    return "a: " + "[" * (levels - 1) + "]" * (levels - 1)


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_files_of_the_demo_are_read_swiftly_and_alike(path: Path) -> None:
    text = path.read_text("utf-8")
    walk = walked(text)
    assert walk is not None
    assert read_swift(text) == walk.data


def test_order_and_kinds_are_those_of_the_walk() -> None:
    text = "b: [1, 2.5, 2026-11-18, '7', \"x\"]\na: {c: {}, d: [], e: [[f, g], {h: i}]}\n"
    found = read_swift(text)
    assert repr(found) == repr(walked(text).data)
    assert list(found) == ["b", "a"]


@pytest.mark.parametrize(
    "text",
    [
        "", "- a\n", "word\n", "a: 1\n---\nb: 2\n", "a: 1\n...\n# end\nb\n", "%YAML 1.1\n---\na: 1\n",
        "a: &x 1\n", "a: *x\n", "a: !!str 1\n", "&x {a: 1}\n", "a: &x [1]\n", "a: !x {b: 1}\n",
        "a: 1\na: 2\n", "NO: 1\n", "1: a\n", "? [a]\n: 1\n", "? {a: 1}\n: 1\n", "<<: {a: 1}\n", "&k a: 1\n",
        "a:\n", "a: NO\n", "a: 1e3\n", "a: 2026-02-30\n", "a: [b\n", "a: 'b\n", "a: \"\\ud800\"\n",
        "*a : 1\n",
        f"a: {'x' * (LONGEST_SCALAR + 1)}\n", nested(DEEPEST + 1),
        "a: '" + "x\n\n" * 20_000 + "'\n",
    ],
    ids=lambda text: repr(text[:18]),
)  # fmt: skip
def test_what_is_not_plainly_right_is_left_to_the_walk(text: str) -> None:
    assert read_swift(text) is None


@pytest.mark.parametrize("text", [nested(DEEPEST), f"a: {'x' * LONGEST_SCALAR}\n", "--- {a: 1}\n...\n"])
def test_the_bounds_are_those_of_the_walk(text: str) -> None:
    assert read_swift(text) == walked(text).data


@pytest.mark.parametrize("path", BAD, ids=lambda path: path.stem)
def test_no_malformed_file_reads_otherwise_than_walked(path: Path) -> None:
    text = path.read_text("utf-8", "replace")
    walk, found = walked(text), read_swift(text)
    assert found is None or (walk is not None and found == walk.data)


LINES = st.lists(
    st.sampled_from(
        ["a: 1", "b: [x, {y: z}]", "  c: d", "- e", "  - f", "g:", "h: 'i'", "j: |", "  k", "a: &l m",
         "n: *l",
         "o: {p: q", "}", "r: !!str s", "# t", "---", "...", "? u", ": v", "NO: w", "x: NO", "", "\"y\": 007"]
    ),
    max_size=7,
).map("\n".join)  # fmt: skip


@settings(deadline=None, max_examples=400)
@given(LINES)
@example("a: 1\n...")
def test_any_text_reads_as_walked_or_is_left_to_the_walk(text: str) -> None:
    walk, found = walked(text), read_swift(text)
    if found is not None:
        assert walk is not None
        assert repr(found) == repr(walk.data)
    elif walk is not None:
        assert not isinstance(walk.data, dict)


def test_places_are_found_when_somebody_asks_and_are_those_of_the_walk(monkeypatch) -> None:
    text = DEMO[-1].read_text("utf-8")
    walk = walked(text)
    walks = []
    monkeypatch.setattr("spindlewise.catalog.yaml_text.Walk", lambda name: walks.append(name) or Walk(name))
    document, problems = read_yaml_text(text, "a.yaml")
    assert (problems, walks) == ([], [])
    assert [*document.places] == [*walk.spots]
    assert [*document.key_places] == [*walk.key_spots]
    assert walks == ["a.yaml"]
    (path, (line, column)), *_ = walk.spots.items()
    assert (document.places[path].line, document.places[path].column) == (line, column)
    assert len(document.places) == len(walk.spots)


def test_keys_are_remembered_up_to_a_number_only(monkeypatch) -> None:
    monkeypatch.setattr(yaml_swift, "_known_keys", {})
    monkeypatch.setattr(yaml_swift, "MOST_KNOWN", 2)
    assert read_swift("a: {b: 1, c: {d: 1, NOT: 1}}") == {"a": {"b": 1, "c": {"d": 1, "NOT": 1}}}
    assert set(yaml_swift._known_keys) == {"a", "b"}
