"""JSON: keys sorted as given, text safe in any terminal, the same bytes for the same answer."""

import json
import math
from collections.abc import Mapping
from typing import TypeAlias

Json: TypeAlias = "bool | int | float | str | list[Json] | dict[str, Json] | None"


def as_json(schema: str, content: Mapping[str, Json]) -> str:
    """One object with its versioned `schema` first, indented by two, with one line feed at the end.

    Raises ValueError for a number that is not finite: JSON has none.

    >>> print(as_json("spindlewise rank 1", {"order": []}), end="")
    {
      "schema": "spindlewise rank 1",
      "order": []
    }
    """
    return plain_json({"schema": schema, **content})


def lined_json(schema: str, content: Mapping[str, Json]) -> str:
    """The same object for a file of many records: each key on a line, each entry of a list on its own.

    A long file is half as long so, is written many times as fast, and a changed record is one changed line.
    Raises ValueError as `as_json` does.

    >>> print(lined_json("spindlewise rank 1", {"pick": None, "order": [{"rank": 1}, {"rank": 2}]}), end="")
    {
    "schema": "spindlewise rank 1",
    "pick": null,
    "order": [
    {"rank": 1},
    {"rank": 2}
    ]
    }
    """
    lines = [f"{json.dumps(key)}: {_lined(value)}" for key, value in {"schema": schema, **content}.items()]
    return "{\n" + ",\n".join(lines) + "\n}\n"


def _lined(value: Json) -> str:
    if isinstance(value, list) and value:
        return "[\n" + ",\n".join(json.dumps(entry, allow_nan=False) for entry in value) + "\n]"
    return json.dumps(value, allow_nan=False)


def plain_json(content: Mapping[str, Json]) -> str:
    """One object without a `schema` of ours, such as a schema itself; else the same.

    >>> print(plain_json({"type": "object"}), end="")
    {
      "type": "object"
    }
    """
    return json.dumps(content, indent=2, allow_nan=False) + "\n"


def number(value: float | None, decimals: int = 6) -> float | None:
    """A number with no more decimals than it can carry, so that the last bits of a sum do not show.

    >>> number(0.1 + 0.2), number(-0.0), number(None)
    (0.3, 0.0, None)
    """
    if value is None:
        return None
    if not math.isfinite(value):
        raise ValueError(f"the number is {value}; JSON holds finite numbers only")
    return round(float(value), decimals) + 0.0
