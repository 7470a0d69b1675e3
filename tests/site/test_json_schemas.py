"""The schemas that stand beside the data hold for the demo's data, and refuse what is broken."""

import copy
import json

import jsonschema
import pytest

from spindlewise.site.json_schemas import products_schema, ranking_schema


def checker(schema):
    kind = jsonschema.Draft202012Validator
    kind.check_schema(schema)
    return kind(schema)


def read(site, name):
    return json.loads((site.folder / "data" / name).read_text("utf-8"))


def test_every_ranking_of_the_demo_is_as_its_schema_says(site):
    check = checker(read(site, "ranking.schema.json"))
    files = [*site.folder.glob("data/ranking-*.json"), *site.folder.glob("data/comparison-*.json")]
    for path in files:
        check.validate(json.loads(path.read_text("utf-8")))
    assert len(files) == len(site.buyers) + len(site.catalog.settings.regions)


def test_the_products_of_the_demo_are_as_their_schema_says(site):
    checker(read(site, "products.schema.json")).validate(read(site, "products.json"))


def test_the_published_schemas_are_the_program_s(site):
    assert read(site, "ranking.schema.json") == ranking_schema()
    assert read(site, "products.schema.json") == json.loads(json.dumps(products_schema()))


def broken(whole, path, value):
    found = copy.deepcopy(whole)
    *way, last = path
    inner = found
    for step in way:
        inner = inner[step]
    inner[last] = value
    return found


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("schema",), "spindlewise rank 2"),
        (("as_of",), "20 November"),
        (("order", 0, "score", "expected"), 101),
        (("order", 0, "price", "amount"), 519.0),
        (("order", 0, "merits", "weight", "grade"), "guessed"),
        (("order", 0, "rank"), 0),
        (("excluded", 0, "because"), "dear"),
    ],
)
def test_a_broken_ranking_is_refused(site, path, value):
    whole = broken(read(site, "comparison-eu.json"), path, value)
    assert not checker(ranking_schema()).is_valid(whole)


@pytest.mark.parametrize(
    ("path", "value"),
    [(("schema",), "spindlewise products 2"), (("products", 0, "kind"), "wheel"), (("as_of",), 1)],
)
def test_broken_products_are_refused(site, path, value):
    assert not checker(products_schema()).is_valid(broken(read(site, "products.json"), path, value))


def test_a_missing_key_is_refused(site):
    whole = read(site, "comparison-eu.json")
    del whole["order"][0]["score"]
    assert not checker(ranking_schema()).is_valid(whole)
