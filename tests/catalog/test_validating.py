from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import Annotated, Literal, Self

import pytest
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator

from spindlewise.catalog.validating import MOST_PROBLEMS, validate
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import Problem, render


def _even(number: int) -> int:
    if number % 2:
        raise ValueError("is odd | write an even number")
    return number


def _code(text: str) -> str:
    if not text.startswith("IP"):
        raise ValueError("is no code | write IPX7")
    return text


class Strict(BaseModel):
    model_config = ConfigDict(strict=True, frozen=True, extra="forbid", allow_inf_nan=False)


class Basis(Strict):
    count: Literal["pair", "one pedal"]
    batteries: Literal["in", "out", "unknown"] = "unknown"


class Weight(Strict):
    value: Annotated[float, Field(ge=0, le=1000)] | Literal["unknown", "none", "not applicable"]
    day: date | Literal["unknown"]
    basis: Basis


class Span(Strict):
    kind: Literal["span"]
    low: float
    high: float

    @model_validator(mode="after")
    def _ordered(self) -> Self:
        if self.low > self.high:
            raise ValueError("low stands above high | exchange them")
        return self


class Points(Strict):
    kind: Literal["points"]
    at: tuple[float, ...]


class Curve(Strict):
    slope: float
    note: str = ""


class Demo(Strict):
    id: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", min_length=2)]
    weight_g: Annotated[tuple[Weight, ...], Field(min_length=1)] | Literal["unknown"] = "unknown"
    cells: Annotated[int, AfterValidator(_even)] = 2
    ingress: Annotated[str, AfterValidator(_code)] | Literal["unknown", "none"] = "unknown"
    price: Decimal = Field(default=Decimal(1), alias="amount")
    shape: Annotated[Span | Points, Field(discriminator="kind")] | None = None
    either: Span | Curve | None = None
    regions: dict[str, Basis] = {}
    tags: Annotated[tuple[str, ...], Field(max_length=2)] = ()
    pair: tuple[float, float] = (0.0, 1.0)
    firm: str | None = None


def _problems(text: str) -> list[Problem]:
    document, problems = read_yaml_text(text, "a.yaml")
    assert document is not None
    record, refused = validate(Demo, document)
    assert (record is None) == bool(refused or problems)
    return [*problems, *refused]


def _printed(text: str) -> list[str]:
    return [line.removeprefix("a.yaml:") for line in render(_problems(text), "plain").splitlines()]


def test_a_good_document_becomes_a_record() -> None:
    document, problems = read_yaml_text(
        "id: demo\nweight_g:\n  - {value: 310, day: 2024-03-01, basis: {count: pair}}\nfirm: x\n", "a.yaml"
    )
    assert document is not None
    record, refused = validate(Demo, document)
    assert (problems, refused) == ([], [])
    assert record is not None
    assert record.weight_g == (Weight(value=310, day=date(2024, 3, 1), basis=Basis(count="pair")),)


CASES: Mapping[str, list[str]] = {
    "cells: 2\n": ["1:1: error: id: the key is missing; add it (missing-key)"],
    "id: demo\nwieght_g: unknown\n": [
        "2:1: error: wieght_g: no such key is known here; did you mean weight_g? allowed here:"
        " id, weight_g, cells,"
        " ingress, amount, shape, either, regions, tags, pair, firm (unknown-key)"
    ],
    "idd: demo\n": [
        "1:1: error: idd: no such key is known here; did you mean id? allowed here: id, weight_g, cells,"
        " ingress, amount, shape, either, regions, tags, pair, firm (unknown-key)"
    ],
    "id: demo\nweight_g:\n  - value: heavy\n    day: 2024-03-01\n    basis: {count: pair}\n": [
        "3:12: error: weight_g[0].value: found text 'heavy'; expected a number, or one of: unknown, none,"
        " not applicable (wrong-kind)"
    ],
    "id: demo\nweight_g:\n  - value: 2000\n    day: soon\n    basis: {batteries: inn, count: pair}\n": [
        "3:12: error: weight_g[0].value: found the number 2000; expected at most 1000 (out-of-range)",
        "4:10: error: weight_g[0].day: found text 'soon'; expected a day as YYYY-MM-DD, or"
        " unknown (wrong-kind)",
        "5:24: error: weight_g[0].basis.batteries: found text 'inn'; did you mean 'in'?"
        " expected one of: in, out, unknown (unlisted-word)",
    ],
    "id: demo\nweight_g:\n  - value: 1\n": [
        "3:5: error: weight_g[0].basis: the key is missing; add it (missing-key)",
        "3:5: error: weight_g[0].day: the key is missing; add it; where there is no value, write unknown"
        " (missing-key)",
    ],
    "id: demo\nweight_g:\n  - {value: 1, day: unknown, basis: {}}\n": [
        "3:37: error: weight_g[0].basis.count: the key is missing; add it (missing-key)"
    ],
    "id: demo\nweight_g: []\n": [
        "2:11: error: weight_g: found an empty list; expected at least 1 entry (list-length)"
    ],
    "id: demo\nweight_g: 310\n": [
        "2:11: error: weight_g: found the number 310; expected a list, or unknown (wrong-kind)"
    ],
    "id: demo\nweight_g:\n  value: 310\n": [
        "3:3: error: weight_g: found keys with values; put a hyphen before its first key: a"
        " list has one even where"
        " it holds one thing (wrong-kind)"
    ],
    "id: demo\nweight_g: unknwon\n": [
        "2:11: error: weight_g: found text 'unknwon'; did you mean 'unknown'? expected a list, or unknown"
        " (wrong-kind)"
    ],
    "id: Demo Pedal\n": ["1:5: error: id: found text 'Demo Pedal'; write demo-pedal (text-form)"],
    "id: a\n": ["1:5: error: id: has 1 character; expected at least 2 characters (text-length)"],
    "id: 53.20\n": ['1:5: error: id: found the number 53.2; put it in quotes: "53.20" (wrong-kind)'],
    "id: 2024-03-01\n": [
        '1:5: error: id: found the day 2024-03-01; put it in quotes: "2024-03-01" (wrong-kind)'
    ],
    "id: demo\ncells: 3\n": ["2:8: error: cells: is odd; write an even number (invalid-value)"],
    "id: demo\ncells: 2.5\n": [
        "2:8: error: cells: found the number 2.5; expected a whole number (wrong-kind)"
    ],
    "id: demo\ningress: X7\n": [
        "2:10: error: ingress: is no code; write IPX7, or one of the words: unknown, none (invalid-value)"
    ],
    "id: demo\namount: 899,00\n": ["2:9: error: amount: found text '899,00'; write 899.00 (wrong-kind)"],
    "id: demo\nprice: x\n": [
        "2:1: error: price: no such key is known here; allowed here: id, weight_g, cells,"
        " ingress, amount, shape,"
        " either, regions, tags, pair, firm (unknown-key)"
    ],
    "id: demo\nshape: {kind: span, low: 2, high: 1}\n": [
        "2:8: error: shape: low stands above high; exchange them (contradiction)"
    ],
    "id: demo\nshape: {kind: points, at: [1, x], lo: 1}\n": [
        "2:31: error: shape.at[1]: found text 'x'; expected a number (wrong-kind)",
        "2:35: error: shape.lo: no such key is known here; allowed here: kind, at (unknown-key)",
    ],
    "id: demo\neither: {slope: x}\n": [
        "2:17: error: either.slope: found text 'x'; expected a number (wrong-kind)"
    ],
    "id: demo\neither: x\n": ["2:9: error: either: found text 'x'; expected keys with values (wrong-kind)"],
    'id: demo\nregions:\n  "NO": {count: pear}\n': [
        "3:17: error: regions.NO.count: found text 'pear'; did you mean 'pair'? expected one"
        " of: pair, one pedal"
        " (unlisted-word)"
    ],
    "id: demo\ntags: [a, b, c]\n": [
        "2:7: error: tags: has 3 entries; expected at most 2 entries (list-length)"
    ],
    "id: demo\npair: [1]\n": [
        "2:7: error: pair[1]: this entry is missing; write at least 2 entries (list-length)"
    ],
    "just text\n": ["1:1: error: found text 'just text'; expected keys with values (wrong-kind)"],
    "- a\n": ["1:1: error: found a list of 1; expected keys with values (wrong-kind)"],
}


@pytest.mark.parametrize("text", CASES)
def test_each_mistake_to_the_letter(text: str) -> None:
    assert _printed(text) == CASES[text]


def test_what_the_reader_refused_is_not_reported_twice() -> None:
    text = "id: no\nweight_g:\n  - {value: 1e3, day: 2024-02-30, basis: ~}\n  - *x\ncells: 0x1\ntags: [yes]\n"
    problems = _problems(text)
    assert [p.field for p in problems] == [
        "id", "weight_g[0].value", "weight_g[0].day", "weight_g[0].basis", "weight_g[1]", "cells", "tags[0]"
    ]  # fmt: skip


def test_an_unknown_key_speaks_even_where_its_value_was_refused() -> None:
    assert [p.rule for p in _problems("id: demo\ncolour: no\n")] == ["ambiguous-word", "unknown-key"]


def test_only_the_missing_key_that_was_misspelt_is_passed_over() -> None:
    text = "id: demo\nweight_g:\n  - {valeu: 1, basis: {count: pair}}\n"
    assert [(p.rule, p.field) for p in _problems(text)] == [
        ("missing-key", "weight_g[0].day"),
        ("unknown-key", "weight_g[0].valeu"),
    ]


def test_the_rules_take_a_prefix() -> None:
    document, _ = read_yaml_text("cells: 2\n", "a.yaml")
    assert document is not None
    assert validate(Demo, document, "product-")[1][0].rule == "product-missing-key"


def test_a_flood_of_faults_is_cut_after_the_first_hundred() -> None:
    document, _ = read_yaml_text("id: demo\nweight_g:\n" + "  - {value: 1}\n" * 3000, "a.yaml")
    assert document is not None
    problems = validate(Demo, document)[1]
    assert len(problems) == MOST_PROBLEMS + 1
    assert [p.place.line for p in problems[:100] if p.place] == [3 + n // 2 for n in range(100)]
    assert problems[-1].message == "there are 5900 more problems in this file"


def test_hidden_characters_of_the_author_are_never_printed() -> None:
    printed = "".join(
        _printed('id: "a\\e[31m\\u202e"\n"k\\e": x\namount: "\\e"\nregions: {"\\e": {count: "\\u202e"}}\n')
    )
    assert printed.isprintable()
    assert "\\x1b" in printed
