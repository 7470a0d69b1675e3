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
