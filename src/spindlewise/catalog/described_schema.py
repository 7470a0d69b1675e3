"""JSON Schema whose descriptions are the texts under the fields, read only when a schema is asked for.

Reading them takes the source of every model; each start of the program would pay for what editors need.
"""

import ast
import inspect
import textwrap
from functools import cache
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue


class Described(GenerateJsonSchema):
    """Describes each property by the text that stands under its field: for `model_json_schema`."""

    def model_schema(self, schema: Any) -> JsonSchemaValue:
        """The schema of one model, with its fields described."""
        found = super().model_schema(schema)
        properties = found.get("properties", {})
        model: type[BaseModel] = schema["cls"]
        texts = field_texts(model)
        for name, field in model.model_fields.items():
            shown = properties.get(field.alias or name)
            if shown is not None and name in texts:
                shown["description"] = texts[name]
        return found


@cache
def field_texts(model: type[BaseModel]) -> dict[str, str]:
    """The text under each field of a model, those of the models it builds on included.

    >>> from spindlewise.catalog.link import Carried
    >>> field_texts(Carried)["firmware"]
    'The firmware that it needs; not applicable where it was there from the start.'
    """
    texts: dict[str, str] = {}
    for each in reversed(model.__mro__):
        if issubclass(each, BaseModel) and each is not BaseModel:
            texts |= _own_texts(each)
    return texts


def _own_texts(model: type[BaseModel]) -> dict[str, str]:
    body = ast.parse(textwrap.dedent(inspect.getsource(model))).body[0]
    found: dict[str, str] = {}
    field = ""
    for statement in body.body if isinstance(body, ast.ClassDef) else ():
        match statement:
            case ast.Expr(value=ast.Constant(value=str(text))) if field:
                found[field] = inspect.cleandoc(text)
        field = ""
        match statement:
            case ast.AnnAssign(target=ast.Name(id=name)):
                field = name
    return found
