import json
from pathlib import Path

import jsonschema
import pytest
import yaml

from command_line import SMALL, run
from spindlewise.cli.schema import NAMES


def schema(name: str) -> dict:  # type: ignore[type-arg]
    result = run("schema", name, catalog=None)
    assert result.exit_code == 0
    found = json.loads(result.stdout)
    assert isinstance(found, dict)
    return found


@pytest.mark.parametrize("name", NAMES)
def test_each_schema_is_valid_strict_and_explained(name: str) -> None:
    found = schema(name)
    jsonschema.Draft202012Validator.check_schema(found)
    assert found["additionalProperties"] is False
    assert "schema" in found["required"]
    assert found["title"] == f"Spindlewise {name}"
    assert found["description"]


@pytest.mark.parametrize(
    ("name", "path"),
    [("catalog", "catalog.yaml"), ("criteria", "criteria.yaml"), ("buyer", "buyers/club-racer.yaml")],
)
def test_the_small_catalogs_files_fit_their_schema(name: str, path: str) -> None:
    text = (SMALL / path).read_text("utf-8")
    data = json.loads(json.dumps(yaml.safe_load(text), default=str))
    jsonschema.validate(data, schema(name))


def test_write_puts_all_of_them_into_a_folder(tmp_path: Path) -> None:
    result = run("schema", "--write", tmp_path / "schemas", catalog=None)
    assert (result.exit_code, result.stdout) == (0, "")
    assert sorted(p.name for p in (tmp_path / "schemas").iterdir()) == sorted(
        f"{n}.schema.json" for n in NAMES
    )


def test_write_of_one_writes_one(tmp_path: Path) -> None:
    run("schema", "buyer", "--write", tmp_path, catalog=None)
    assert [p.name for p in tmp_path.iterdir()] == ["buyer.schema.json"]


def test_a_file_in_the_way_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    assert run("schema", "--write", tmp_path / "file" / "x", catalog=None).exit_code == 5


def test_no_name_and_no_folder_is_wrong_usage() -> None:
    assert run("schema", catalog=None).exit_code == 2


def test_a_near_name_is_offered() -> None:
    result = run("schema", "prodcut", catalog=None)
    assert result.exit_code == 2
    assert "did you mean product?" in result.stderr
