"""The manifest: what a publish was made from and what it wrote, each by its SHA-256."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import PurePosixPath

from spindlewise.catalog.file_digest import FileDigest
from spindlewise.catalog.schema_version import newer_than

NAME = "manifest.json"
SCHEMA = "spindlewise manifest 2"
WITHOUT_FILES = "spindlewise manifest 1"
"""The first version had digests of what was read from the inputs, not of their files."""


@dataclass(frozen=True, slots=True)
class Manifest:
    """The catalog's files that went in and the site's files that came out, both by path, sorted."""

    as_of: str
    inputs: Mapping[str, FileDigest] = field(default_factory=dict)
    outputs: Mapping[str, str] = field(default_factory=dict)

    def to_bytes(self) -> bytes:
        """The manifest as its file."""
        whole = {
            "schema": SCHEMA,
            "as_of": self.as_of,
            "inputs": {
                name: {"bytes": found.size_bytes, "sha256": found.sha256}
                for name, found in sorted(self.inputs.items())
            },
            "outputs": dict(sorted(self.outputs.items())),
        }
        return (json.dumps(whole, indent=2, ensure_ascii=False) + "\n").encode()


def read_manifest(data: bytes) -> Manifest | None:
    """The manifest in the file, None where it is not one; entries that lead out of their folder are dropped.

    Of the first version the outputs are read; its inputs were no files.
    """
    whole = _object(data)
    if whole.get("schema") not in (SCHEMA, WITHOUT_FILES):
        return None
    outputs = {name: told for name, told in _entries(whole, "outputs") if isinstance(told, str)}
    sources = {name: _source(told) for name, told in _entries(whole, "inputs")}
    inputs = {name: source for name, source in sources.items() if source is not None}
    return Manifest(str(whole.get("as_of")), inputs, outputs)


def newer_manifest(data: bytes) -> str | None:
    """What is to be said of a manifest that a newer program wrote; nothing of any other."""
    newer = newer_than(_object(data).get("schema"), SCHEMA)
    return None if newer is None else "; ".join(newer)


def _object(data: bytes) -> dict[str, object]:
    try:
        whole = json.loads(data)
    except (ValueError, RecursionError):
        return {}
    return whole if isinstance(whole, dict) else {}


def _entries(whole: Mapping[str, object], key: str) -> list[tuple[str, object]]:
    found = whole.get(key)
    return [(k, v) for k, v in found.items() if stays_inside(k)] if isinstance(found, dict) else []


def _source(told: object) -> FileDigest | None:
    size, digest = (told.get("bytes"), told.get("sha256")) if isinstance(told, dict) else (None, None)
    return FileDigest(size, digest) if isinstance(size, int) and isinstance(digest, str) else None


def stays_inside(name: str) -> bool:
    """Whether a name from a manifest is a plain relative path below its folder.

    >>> stays_inside("products/one.html"), stays_inside("../one.html"), stays_inside("/one.html")
    (True, False, False)
    """
    path = PurePosixPath(name)
    plain = bool(path.parts) and not path.is_absolute() and path.as_posix() == name
    return plain and ".." not in path.parts and "\\" not in name and ":" not in name and name.isprintable()


def sha256(data: bytes) -> str:
    """The SHA-256 of the bytes, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()
