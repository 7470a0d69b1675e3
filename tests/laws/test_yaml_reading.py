"""Laws of reading: any text is answered, plain data come back as written, places point at the text."""

import re
from datetime import date
from typing import Any

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.catalog.document import Misread
from spindlewise.catalog.plain_scalar import Surprise, read_plain
from spindlewise.catalog.product import Product
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import render

PIECES = st.sampled_from(
    [
        *(
            "a: ",
            "b: ",
            "- ",
            "\n",
            "  ",
            "\t",
            "{",
            "}",
            "[",
            "]",
            ", ",
            ": ",
            "? ",
            "'",
            '"',
            "\\",
            "|\n",
            ">\n",
        ),
        *("&x ", "*x", "!t ", "<<: ", "#", "---\n", "...\n", "%", "\r\n", "\0", "\u2028"),
        *("no", "~", "1e3", "1:30", "2024-02-30", "x"),
    ]
)
LETTERS = st.characters(exclude_categories=("C", "Zl", "Zp"), exclude_characters="\u0085\ufeff")


def _is_plainly_read(text: str) -> bool:
    """PyYAML writes without quotes what it reads back as text, such as nO and 1e3; these are refused here."""
    return not isinstance(read_plain(text), Surprise) or text == "" or not re.fullmatch(r"[-+.\w]+", text)


WORDS = st.text(LETTERS, max_size=30).filter(_is_plainly_read)
SCALARS = (
    WORDS
    | st.integers(-(10**14), 10**14)
    | st.dates()
    | st.decimals(-10_000, 10_000, places=3, allow_nan=False).map(float).filter(lambda x: "e" not in repr(x))
)
DATA = st.recursive(
    SCALARS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(WORDS, inner, max_size=4),
    max_leaves=20,
)


def _with_tuples(data: Any) -> Any:
    if isinstance(data, list):
        return tuple(_with_tuples(entry) for entry in data)
    return {k: _with_tuples(v) for k, v in data.items()} if isinstance(data, dict) else data


@given(DATA, st.booleans())
@settings(deadline=None)
def test_plain_data_come_back_as_they_were_written(data: Any, flow: bool) -> None:
    class Dumper(yaml.SafeDumper):
        def ignore_aliases(self, data: Any) -> bool:
            return True

    text = yaml.dump(data, Dumper=Dumper, default_flow_style=flow, allow_unicode=True, sort_keys=False)
    document, problems = read_yaml_text(text, "a.yaml")
    assert problems == []
    assert document is not None
    assert document.data == _with_tuples(data)
    assert _kinds(document.data) == _kinds(_with_tuples(data))


def _kinds(data: Any) -> Any:
    if isinstance(data, dict):
        return [_kinds(value) for value in data.values()]
    return [_kinds(entry) for entry in data] if isinstance(data, tuple) else type(data)


@given(st.text(max_size=200) | st.lists(PIECES, max_size=30).map("".join) | st.binary(max_size=100))
@settings(deadline=None, max_examples=400)
def test_any_text_is_answered_with_a_document_or_with_problems(text: str | bytes) -> None:
    document, problems = read_yaml_text(text, "a.yaml")
    assert document is not None or problems
    assert len(problems) <= 101
    for style in ("plain", "human", "json", "github"):
        printed = render(problems, style, lambda _: text if isinstance(text, str) else None)  # type: ignore[arg-type]
        assert printed.replace("\n", "").isprintable()
        assert len(printed) <= 1_000 * len(problems) + 200
    if document is not None:
        assert any(isinstance(value, Misread) for value in _leaves(document.data)) <= bool(problems)
        record, refused = validate(Product, document)
        assert record is None
        assert problems or refused


def _leaves(data: object) -> list[object]:
    if isinstance(data, dict):
        return [leaf for value in data.values() for leaf in _leaves(value)]
    return [leaf for entry in data for leaf in _leaves(entry)] if isinstance(data, tuple) else [data]


@given(st.lists(PIECES, max_size=30).map("".join))
@settings(deadline=None)
def test_every_place_lies_within_the_text(text: str) -> None:
    document, problems = read_yaml_text(text, "a.yaml")
    lines = text.replace("\r\n", "\n").split("\n")
    places = [p.place for p in problems]
    if document is not None:
        places += [*document.places.values(), *document.key_places.values()]
    for place in places:
        assert place is not None
        assert 1 <= place.line <= len(lines) + 1
        assert 1 <= place.column <= (len(lines[place.line - 1]) if place.line <= len(lines) else 0) + 1


@given(
    st.dictionaries(
        st.from_regex(r"[a-z_]{3,8}z", fullmatch=True), st.integers(0, 999), min_size=1, max_size=8
    )
)
@settings(deadline=None)
def test_places_point_at_the_key_and_the_value(data: dict[str, int]) -> None:
    text = "".join(f"{key}:   {value}\n" for key, value in data.items())
    document, _ = read_yaml_text(text, "a.yaml")
    assert document is not None
    for key, value in data.items():
        at, key_at = document.places[(key,)], document.key_places[(key,)]
        line = text.split("\n")[at.line - 1]
        assert line[at.column - 1 :] == str(value)
        assert line[key_at.column - 1 :].startswith(key)


@given(st.dates())
def test_days_are_days_and_not_moments(day: date) -> None:
    document, _ = read_yaml_text(f"a: {day.isoformat()}", "a.yaml")
    assert document is not None
    assert document.data == {"a": day}
    assert type(document.value(("a",))) is date
