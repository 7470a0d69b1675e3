from typing import Annotated, Literal

from pydantic import BaseModel, Field

from spindlewise.catalog.model_keys import fields_at, words_in


class Inner(BaseModel):
    value: float | Literal["unknown"]
    note: str | None = None


class Other(BaseModel):
    other: int


class Outer(BaseModel):
    schema_: str = Field(alias="schema")
    one: Inner
    many: Annotated[tuple[Inner, ...], Field(min_length=1)] | Literal["unknown", "none"]
    named: dict[str, Inner]
    either: Inner | Other
    pair: tuple[Inner, Other]
    deep: dict[str, list[Annotated[Inner, "x"]]] | None = None


def test_keys_by_path() -> None:
    assert list(fields_at(Outer, ())) == ["schema", "one", "many", "named", "either", "pair", "deep"]
    for path in [("one",), ("many", 3), ("named", "NO"), ("pair", 0), ("deep", "x", 0)]:
        assert list(fields_at(Outer, path)) == ["value", "note"]
    assert list(fields_at(Outer, ("pair", 1))) == ["other"]


def test_a_union_offers_all_or_the_branch_that_was_taken() -> None:
    assert list(fields_at(Outer, ("either",))) == ["value", "note", "other"]
    assert list(fields_at(Outer, ("either",), {"Other"})) == ["other"]


def test_nothing_is_allowed_where_no_model_stands() -> None:
    for path in [("missing",), ("one", "value"), ("one", 0), ("many", "x", "y"), ("schema", "x")]:
        assert fields_at(Outer, path) == {}


def test_words_of_a_field_but_not_those_inside_its_lists() -> None:
    assert words_in(Outer.model_fields["many"].annotation) == ("unknown", "none")
    assert words_in(Annotated[Literal["a", 1], "x"] | None) == ("a",)
    assert words_in(tuple[Literal["a"], ...]) == ()
    assert words_in(float) == ()
