import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spindlewise.problems import Place, Problem, nearest, quoted, render, shown, sorted_problems

HEAVY = Problem(
    Place("products/a.yaml", 3, 10),
    "error",
    "wrong-kind",
    "weight_g: found text 'heavy'",
    "expected a number",
)
OLD = Problem(Place("products/a.yaml", 2, 1), "warning", "old-price", "prices: is old", field="prices")
LOST = Problem(None, "error", "unreadable-file", "b.yaml: no such file", "name another")
TEXT = "id: a\nprices: x\nweight_g: heavy\n"


def test_plain_is_one_line_a_problem_in_order_of_place() -> None:
    assert render([HEAVY, LOST, OLD], "plain") == (
        "error: b.yaml: no such file; name another (unreadable-file)\n"
        "products/a.yaml:2:1: warning: prices: is old (old-price)\n"
        "products/a.yaml:3:10: error: weight_g: found text 'heavy'; expected a number (wrong-kind)\n"
    )
    assert render([], "plain") == ""


def test_human_points_at_the_place_and_ends_with_the_count() -> None:
    assert render([HEAVY, OLD], "human", lambda file: TEXT if file == "products/a.yaml" else None) == (
        "products/a.yaml:2:1: warning: prices: is old (old-price)\n"
        "    prices: x\n"
        "    ^\n"
        "products/a.yaml:3:10: error: weight_g: found text 'heavy'; expected a number (wrong-kind)\n"
        "    weight_g: heavy\n"
        "             ^\n"
        "1 error and 1 warning in 1 file. Put the errors right, the first one first, then check again.\n"
    )


def test_human_without_errors_without_source_and_without_place() -> None:
    assert render([OLD], "human").splitlines() == [
        "products/a.yaml:2:1: warning: prices: is old (old-price)",
        "1 warning in 1 file. Nothing has to be changed; look at each warning once.",
    ]
    assert render([LOST], "human", lambda _: TEXT).splitlines()[-1].startswith("1 error. Put")
    assert render([HEAVY], "human", lambda _: "short\n").count("\n") == 2
    assert render([], "human") == "No problems.\n"


def test_caret_stands_under_the_place_behind_wide_and_hidden_characters() -> None:
    problem = Problem(Place("a", 1, 6), "error", "r", "m")
    lines = render([problem], "human", lambda _: "踏板\te\u0301x").splitlines()
    assert lines[1] == "    踏板\\te\u0301x"
    assert lines[2] == " " * (4 + 4 + 2 + 1) + "^"


def test_long_lines_are_cut_round_the_place() -> None:
    problem = Problem(Place("a", 1, 301), "error", "r", "m")
    source, caret = render([problem], "human", lambda _: "x" * 300 + "!" + "y" * 300).splitlines()[1:3]
    assert len(source) == 4 + 102
    assert source[len(caret) - 1] == "!"
    assert source.startswith("    …x")
    assert source.endswith("y…")


def test_json_is_one_object_with_counts() -> None:
    whole = json.loads(render([HEAVY, OLD, LOST], "json"))
    assert (whole["errors"], whole["warnings"]) == (2, 1)
    assert whole["problems"][0]["file"] is None
    assert whole["problems"][1] == {
        "file": "products/a.yaml",
        "line": 2,
        "column": 1,
        "level": "warning",
        "rule": "old-price",
        "field": "prices",
        "message": "prices: is old",
        "tip": "",
    }


def test_github_escapes_what_ends_a_property() -> None:
    odd = Problem(Place("a,b:c%.yaml", 3, 4), "error", "r", "100 % sure\nnot")
    assert render([odd, LOST], "github").splitlines() == [
        "::error title=unreadable-file::b.yaml: no such file; name another",
        "::error file=a%2Cb%3Ac%25.yaml,line=3,col=4,title=r::100 %25 sure\\nnot",
    ]


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("plain ü 踏", "plain ü 踏"),
        ("a\nb\tc\rd\0", "a\\nb\\tc\\rd\\0"),
        ("\x1b[31mred", "\\x1b[31mred"),
        ("\u202egnp", "\\u202egnp"),
        ("\u2066x\u200e", "\\u2066x\\u200e"),
        ("\xa0\x9b", "\\xa0\\x9b"),
        ("\ud800", "\\ud800"),
        ("\U000e0001", "\\U000e0001"),
    ],
)
def test_what_cannot_be_seen_is_written_out(text: str, printed: str) -> None:
    assert shown(text) == printed


@pytest.mark.parametrize("style", ["plain", "human", "json", "github"])
def test_no_style_lets_an_escape_through(style: str) -> None:
    nasty = "\x1b]0;x\x07\u202e\ud800\n"
    problem = Problem(Place(nasty, 1, 1), "error", "r", nasty, nasty, nasty)
    text = render([problem], style, lambda _: nasty)  # type: ignore[arg-type]
    assert not set(text) & set("\x1b\x07\u202e\ud800")
    text.encode("utf-8")


@given(st.text(), st.integers(2, 80))
def test_shown_is_printable_bounded_and_idempotent(text: str, limit: int) -> None:
    assert shown(text).isprintable()
    assert shown(shown(text)) == shown(text)
    assert shown(text, limit).isprintable()
    assert len(shown(text, limit)) <= 10 * limit


def test_quoted_cuts_long_text() -> None:
    assert quoted("x" * 100, 10) == "'xxxxxxxxx…'"


def test_nearest_finds_a_slip_and_no_stranger() -> None:
    assert nearest("Wieght_g", ["stack_mm", "weight_g"]) == "weight_g"
    assert nearest("UNKNOWN", ["unknown", "none"]) == "unknown"
    assert nearest("colour", ["weight_g", "stack_mm"]) is None
    assert nearest("x" * 100_000, ["weight_g"]) is None
    assert nearest("", []) is None


@given(st.permutations([HEAVY, OLD, LOST, Problem(Place("products/a.yaml", 3, 10), "error", "a", "m")]))
def test_order_does_not_depend_on_the_order_given(problems: list[Problem]) -> None:
    assert [p.rule for p in sorted_problems(problems)] == [
        "unreadable-file", "old-price", "a", "wrong-kind"
    ]  # fmt: skip
