"""The schemas that editors use: made from the models, and right for every file of the demo."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.cli.schema import NAMES, schema_text

ROOT = Path(__file__).parents[2]
FILES = {
    "product": [*sorted((ROOT / "catalog" / "products").glob("*.yaml")), ROOT / "catalog" / "TEMPLATE.yaml"],
    "buyer": sorted((ROOT / "catalog" / "buyers").glob("*.yaml")),
    "catalog": [ROOT / "catalog" / "catalog.yaml"],
    "criteria": [ROOT / "catalog" / "criteria.yaml"],
    "observations": sorted((ROOT / "catalog" / "bench" / "observations").glob("*.yaml")),
}


def _as_an_editor_sees_it(value: object) -> object:
    """JSON has no days and no tuples."""
    if isinstance(value, dict):
        return {key: _as_an_editor_sees_it(inner) for key, inner in value.items()}
    if isinstance(value, tuple):
        return [_as_an_editor_sees_it(inner) for inner in value]
    return value.isoformat() if isinstance(value, date) else value


@pytest.mark.parametrize("name", NAMES)
def test_the_committed_schema_is_what_the_models_say_now(name: str) -> None:
    committed = (ROOT / "schemas" / f"{name}.schema.json").read_text("utf-8")
    assert committed == schema_text(name), "run: spindlewise schema --write schemas"


def test_there_is_a_schema_for_each_kind_of_file_and_no_other() -> None:
    assert sorted(p.name for p in (ROOT / "schemas").iterdir()) == sorted(f"{n}.schema.json" for n in NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_the_schema_is_a_schema_and_accepts_every_file_of_the_demo(name: str) -> None:
    schema: dict[str, Any] = json.loads(schema_text(name))
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema, format_checker=Draft202012Validator.FORMAT_CHECKER)
    assert FILES[name]
    for path in FILES[name]:
        document, problems = read_yaml(path, path.name)
        assert problems == []
        assert document is not None
        faults = [error.message for error in validator.iter_errors(_as_an_editor_sees_it(document.data))]
        assert faults == [], path.name


def test_the_schema_refuses_what_the_models_refuse() -> None:
    validator = Draft202012Validator(json.loads(schema_text("product")))
    for case in ("unknown-key", "missing-key", "id-with-capitals", "cell-count-zero", "ingress-lower-case"):
        document, _ = read_yaml(ROOT / "tests" / "catalog" / "bad" / f"product-{case}.yaml", case)
        assert document is not None
        assert not validator.is_valid(_as_an_editor_sees_it(document.data)), case


@pytest.mark.parametrize("name", NAMES)
def test_every_file_of_the_demo_names_its_schema_for_editors(name: str) -> None:
    for path in FILES[name]:
        first = path.read_text("utf-8").splitlines()[0]
        prefix = "# yaml-language-server: $schema="
        assert first.startswith(prefix), path.name
        if path.name != "TEMPLATE.yaml":
            assert (path.parent / first.removeprefix(prefix)).resolve() == (
                ROOT / "schemas" / f"{name}.schema.json"
            ), path.name
