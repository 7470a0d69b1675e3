from typing import Literal

from pydantic import BaseModel, Field

from spindlewise.catalog.described_schema import Described, field_texts


class Ground(BaseModel):
    """What the other builds on."""

    one: int
    """The first
    of two lines."""
    bare: int

    @property
    def worked_out(self) -> int:
        """No field's text."""
        return self.one


class Upper(Ground):
    """Builds on it."""

    two_: Literal["a"] = Field(alias="two")
    """The second."""
    below: Ground


def test_a_text_under_a_field_is_its_text_inherited_or_not() -> None:
    assert field_texts(Upper) == {"one": "The first\nof two lines.", "two_": "The second."}


def test_the_schema_describes_each_property_by_it_under_the_name_in_the_file() -> None:
    found = Upper.model_json_schema(by_alias=True, schema_generator=Described)

    assert found["properties"]["two"]["description"] == "The second."
    assert found["$defs"]["Ground"]["properties"]["one"]["description"] == "The first\nof two lines."
    assert "description" not in found["properties"]["bare"]
    assert found["description"] == "Builds on it."
