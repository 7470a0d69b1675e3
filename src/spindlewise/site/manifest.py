"""The manifest: what a publish was made from and what it wrote, each by its SHA-256."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import PurePosixPath

from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog

NAME = "manifest.json"
SCHEMA = "spindlewise manifest 1"


@dataclass(frozen=True, slots=True)
class Manifest:
    """Names and SHA-256 in hexadecimal of all that went in and all that came out, both sorted by name."""

    as_of: str
    inputs: Mapping[str, str]
    outputs: Mapping[str, str]

    def to_bytes(self) -> bytes:
        """The manifest as its file."""
        whole = {
            "schema": SCHEMA,
            "as_of": self.as_of,
            "inputs": dict(sorted(self.inputs.items())),
            "outputs": dict(sorted(self.outputs.items())),
        }
        return (json.dumps(whole, indent=2, ensure_ascii=False) + "\n").encode()


def read_manifest(data: bytes) -> Manifest | None:
    """The manifest in the file, None where it is not one; entries that lead out of the site are dropped."""
    try:
        whole = json.loads(data)
    except ValueError:
        return None
    if not isinstance(whole, dict) or whole.get("schema") != SCHEMA:
        return None
    inputs, outputs = (_hashes(whole.get(key)) for key in ("inputs", "outputs"))
    return Manifest(str(whole.get("as_of")), inputs, {k: v for k, v in outputs.items() if stays_inside(k)})


def _hashes(found: object) -> dict[str, str]:
    if not isinstance(found, dict):
        return {}
    return {k: v for k, v in found.items() if isinstance(k, str) and isinstance(v, str)}


def stays_inside(name: str) -> bool:
    """Whether a name from a manifest is a plain relative path below the site's folder.

    >>> stays_inside("products/one.html"), stays_inside("../one.html"), stays_inside("/one.html")
    (True, False, False)
    """
    path = PurePosixPath(name)
    plain = bool(path.parts) and not path.is_absolute() and path.as_posix() == name
    return plain and ".." not in path.parts and "\\" not in name and ":" not in name and name.isprintable()


def sha256(data: bytes) -> str:
    """The SHA-256 of the bytes, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def input_hashes(catalog: Catalog, buyers: Mapping[str, Buyer], day: date) -> dict[str, str]:
    """The SHA-256 of each thing that a publish is made from: each product, each buyer, and the logs."""
    texts = {
        "as_of": day.isoformat(),
        "catalog": catalog.settings.model_dump_json(by_alias=True),
        "criteria": catalog.criteria.model_dump_json(by_alias=True),
        "prices": "\n".join(repr(row.cells()) for row in catalog.prices),
        "rates": "\n".join(f"{r.date} {r.base} {r.quote} {r.rate}" for r in catalog.rates.rows),
        "taxes": "\n".join(f"{t.date} {t.region} {t.rate_pct} {t.habit}" for t in catalog.taxes.rows),
    }
    texts.update({f"product {k}": v.model_dump_json(by_alias=True) for k, v in catalog.products.items()})
    texts.update({f"buyer {k}": v.model_dump_json(by_alias=True) for k, v in buyers.items()})
    return {name: sha256(text.encode()) for name, text in texts.items()}
