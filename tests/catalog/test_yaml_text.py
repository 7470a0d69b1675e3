import os
import sys
import time
from datetime import date
from pathlib import Path

import pytest

from spindlewise.catalog.document import MISREAD
from spindlewise.catalog.yaml_source import LARGEST_BYTES
from spindlewise.catalog.yaml_text import read_yaml, read_yaml_text
from spindlewise.problems import render

GOOD = """\
# a pedal
schema: spindlewise product 1
id: demo-one        # a comment
weight_g:
  - value: 310.50
    date: 2024-03-01
    basis: {count: pair, cleats: "off"}
count: 2
note: >-
  folded
  text
plain text over
  two lines: x
"""


def test_a_good_file_becomes_plain_data(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(GOOD.replace("plain text over\n  two lines: x\n", ""), "utf-8")
    document, problems = read_yaml(tmp_path / "a.yaml", "products/a.yaml")
    assert problems == []
    assert document is not None
    assert document.name == "products/a.yaml"
    assert document.data == {
        "schema": "spindlewise product 1",
        "id": "demo-one",
        "weight_g": (
            {"value": 310.5, "date": date(2024, 3, 1), "basis": {"count": "pair", "cleats": "off"}},
        ),
        "count": 2,
        "note": "folded text",
    }


def test_a_syntax_error_is_reported_with_what_was_found_before_it() -> None:
    document, problems = read_yaml_text("a: no\n" + GOOD, "a.yaml")
    assert document is None
    assert [(p.rule, p.place.line if p.place else 0) for p in problems] == [
        ("ambiguous-word", 1),
        ("yaml-syntax", 14),
    ]


def test_single_refusals_leave_a_document() -> None:
    document, problems = read_yaml_text("a: no\nb: 1\n---\nc: 1\n", "a.yaml")
    assert document is not None
    assert document.data == {"a": MISREAD, "b": 1}
    assert [p.rule for p in problems] == ["ambiguous-word", "several-documents"]


@pytest.mark.parametrize("text", ["", "\n\n", "# x\n", "---\n", "--- # x\n...\n", b"\xef\xbb\xbf"])
def test_an_empty_file_is_a_problem(text: str | bytes) -> None:
    document, problems = read_yaml_text(text, "a.yaml")
    assert document is None
    assert (
        render(problems, "plain")
        == "a.yaml:1:1: error: the file holds nothing; begin with a template (empty-file)\n"
    )


def test_files_that_cannot_be_read_are_problems_without_a_place(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    for name, why in {
        "missing.yaml": "no such file or directory",
        "": "is not a regular file",
        "pipe": "is not a regular file",
        "x" * 300: "file name too long",
        "nul\0": "embedded null byte",
    }.items():
        document, [problem] = read_yaml(tmp_path / name, "a.yaml")
        assert document is None
        assert (problem.place, problem.rule, problem.message) == (None, "unreadable-file", f"a.yaml: {why}")


def test_no_more_than_the_largest_size_is_read(tmp_path: Path) -> None:
    with (tmp_path / "huge.yaml").open("wb") as file:
        file.truncate(40 * LARGEST_BYTES)
    document, [problem] = read_yaml(tmp_path / "huge.yaml", "a.yaml")
    assert (document, problem.rule) == (None, "file-too-large")


BOMBS = {
    "aliases": "a0: &a0 [x]\n" + "".join(f"a{n}: &a{n} [*a{n - 1}, *a{n - 1}]\n" for n in range(1, 40)),
    "merge keys": "a0: &a0 {x: y}\n"
    + "".join(f"a{n}: &a{n} {{<<: [*a{n - 1}, *a{n - 1}]}}\n" for n in range(1, 40)),
    "brackets": "[" * 2000 + "]" * 2000,
    "braces": "{a: " * 2000 + "}" * 2000,
    "many brackets": "[" * 500_000,
    "hyphens": "- " * 500_000,
    "question marks": "? " * 500_000,
    "commas": "[" + "," * 1_000_000,
    "entries": "[" + "1," * 500_000 + "]",
    "keys": "".join(f"k{n}: x\n" for n in range(100_000)),
    "same key": "a: 1\n" * 200_000,
    "one text": "a: " + "x" * 1_000_000,
    "escapes": 'a: "' + "\\x41" * 200_000 + '"',
    "line feeds": "\n" * 1_000_000,
    "comment": "#" * 1_000_000,
    "digits": "a: " + "9" * 1_000_000,
    "indent": "a: no\nb: |\n" + " " * 1_000_000,
    "anchors": "&a " * 300_000,
    "tags": "a: !" + "x" * 1_000_000,
    "tabs": "\t\n" * 500_000,
    "nul": "\0" * 1_000_000,
}


HANG_S = 2.0 if sys.gettrace() is None else 8.0
"""Processor seconds; a run whose lines are traced for coverage takes some four times as long."""


@pytest.mark.parametrize("name", BOMBS)
def test_bombs_are_refused_without_a_hang(name: str) -> None:
    started = time.process_time()
    _, problems = read_yaml_text(BOMBS[name], "a.yaml")
    printed = render(problems, "human", lambda _: BOMBS[name])
    assert time.process_time() - started < HANG_S
    assert problems
    assert len(problems) <= 102
    assert len(printed) < 100_000
