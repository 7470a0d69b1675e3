"""A line of a log that shows when it was changed: JSON whose last key is the SHA-256 of all before it."""

import hashlib
import json
import re
from collections.abc import Mapping
from typing import Any

_SEALED = re.compile(rb'(\{.+),"seal":"([0-9a-f]{64})"\}')


def sealed(record: Mapping[str, Any]) -> bytes:
    """The record as one line of JSON with its seal, without an end.

    >>> line = sealed({"pick": "heron"})
    >>> unsealed(line), unsealed(line.replace(b"heron", b"siskin"))
    (b'{"pick":"heron"}', None)

    Raises ValueError for what JSON cannot hold, and for a record that is empty or has a seal.
    """
    if not record or "seal" in record:
        raise ValueError("a record with keys of its own is sealed, and only once")
    body = json.dumps(record, ensure_ascii=True, separators=(",", ":"), allow_nan=False).encode()
    return body[:-1] + b',"seal":"' + hashlib.sha256(body).hexdigest().encode() + b'"}'


def unsealed(line: bytes) -> bytes | None:
    """The JSON under the seal; nothing where the seal is missing or any bit of the line has changed."""
    found = _SEALED.fullmatch(line)
    if found is None:
        return None
    body = found[1] + b"}"
    return body if hashlib.sha256(body).hexdigest().encode() == found[2] else None
