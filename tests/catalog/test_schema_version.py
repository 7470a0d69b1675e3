"""A newer file is refused with advice, and nothing else is said of it."""

import pytest
from pydantic import BaseModel

from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.product import Cleat, Product
from spindlewise.catalog.schema_version import newer_than, version_word
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import render

KNOWN = "spindlewise price history 3"


def test_a_higher_number_of_the_same_kind_is_newer() -> None:
    told = newer_than("spindlewise price history 10", KNOWN)
    assert told is not None
    assert told[0].endswith("this one reads price history 3, it is price history 10")
    assert told[1] == "update Spindlewise, then read it again"


@pytest.mark.parametrize(
    "found",
    [
        KNOWN, "spindlewise price history 2", "spindlewise rank 9", "spindlewise price history 04",
        "spindlewise price history 4 ", "spindlewise price history 1234567", "", None, 4, ("x",),
    ],
)  # fmt: skip
def test_whatever_else_stands_there_is_not_newer(found: object) -> None:
    assert newer_than(found, KNOWN) is None


def test_what_is_known_is_a_version_word() -> None:
    with pytest.raises(ValueError, match="a version word is"):
        newer_than("x", "product 1")


def test_a_model_of_a_file_has_a_word_and_a_part_of_one_has_none() -> None:
    class Loose(BaseModel):
        schema_: str

    assert version_word(Product) == "spindlewise product 1"
    assert version_word(Buyer) == "spindlewise buyer 1"
    assert version_word(Cleat) is None
    assert version_word(Loose) is None


def test_of_a_newer_file_only_that_is_said_however_strange_it_is() -> None:
    document, _ = read_yaml_text("new_key: 1\nschema: spindlewise product 2\nid: heron\n", "a.yaml")
    assert document is not None
    record, problems = validate(Product, document)
    assert record is None
    assert render(problems, "plain") == (
        "a.yaml:2:9: error: schema: was written for a newer Spindlewise: this one reads product 1, it is "
        "product 2; update Spindlewise, then read it again (newer-schema)\n"
    )
