"""`spindlewise schema`: JSON Schema of the YAML files, for editors."""

import json as standard_json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.printing import answer, remark

if TYPE_CHECKING:
    from pydantic import BaseModel

NAMES = ("product", "buyer", "catalog", "criteria", "observations")
DIALECT = "https://json-schema.org/draft/2020-12/schema"


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("schema")(schema)


def schema(
    name: Annotated[str | None, typer.Argument(metavar="|".join(NAMES), help="Of which file.")] = None,
    write: Annotated[
        Path | None, typer.Option("--write", metavar="DIR", help="Write NAME.schema.json files here.")
    ] = None,
) -> None:
    """Print JSON Schema for the YAML files.

    Of one kind of file, or of all kinds into a folder with --write.
    """
    if name is not None and name not in NAMES:
        from spindlewise.answer.stated import did_you_mean

        wrong_usage(f"no file of this kind: {name!r}; {did_you_mean(name, NAMES)}")
    if write is None:
        if name is None:
            wrong_usage(f"name one of {', '.join(NAMES)}, or a folder with --write")
        answer(schema_text(name))
        return
    from spindlewise.catalog.durable import CannotWrite, reason, replace_file

    try:
        write.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{write}: {reason(error)}") from error
    for each in NAMES if name is None else (name,):
        path = write / f"{each}.schema.json"
        replace_file(path, schema_text(each).encode())
        remark(f"{path} written.")


def schema_text(name: str) -> str:
    """The JSON Schema of one kind of file, the same bytes each time."""
    from spindlewise.catalog.described_schema import Described

    content = _model(name).model_json_schema(by_alias=True, schema_generator=Described)
    content = {"$schema": DIALECT, **content, "title": f"Spindlewise {name}"}
    return standard_json.dumps(content, indent=2, ensure_ascii=False) + "\n"


def _model(name: str) -> "type[BaseModel]":
    from spindlewise.buyer.buyer import Buyer
    from spindlewise.catalog.bench_record import BenchRecord
    from spindlewise.catalog.criteria import Criteria
    from spindlewise.catalog.product import Product
    from spindlewise.catalog.settings import Settings

    models: dict[str, type[BaseModel]] = {
        "product": Product,
        "buyer": Buyer,
        "catalog": Settings,
        "criteria": Criteria,
        "observations": BenchRecord,
    }
    return models[name]
