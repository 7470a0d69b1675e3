"""A catalog and its site held to the manifest of the last publish: what has changed since, and what may."""

from collections.abc import Iterator
from pathlib import Path

from spindlewise.catalog.file_digest import GROWING, FileDigest, digest_of
from spindlewise.problems import Level, Place, Problem
from spindlewise.site.manifest import NAME, newer_manifest, read_manifest

_COPY = "compare it with a copy of yours; if the change was meant, publish again"


def held_to_record(catalog: Path, out: Path) -> list[Problem]:
    """Everything that is not as the site's manifest says, as problems.

    A log or dated table may have grown, and its recorded beginning must be the same to the bit; recordings
    and whatever else lies in `bench` must be the same. These are errors, and so is a page that is missing or
    is not the one that was written. Of products, criteria and settings, which authors edit, a change is a
    warning.
    """
    try:
        return list(_differences(catalog, out))
    except OSError as error:
        told = f"cannot be read: {error.strerror or error}"
        return [_said(Path(str(error.filename or out)), "error", "unreadable-file", told, "")]


def _differences(catalog: Path, out: Path) -> Iterator[Problem]:
    path = out / NAME
    if not path.is_file():
        tip = "name the folder of a site that `spindlewise publish` wrote"
        yield _said(path, "error", "unreadable-file", "is not there", tip)
        return
    data = path.read_bytes()
    newer = newer_manifest(data)
    manifest = read_manifest(data)
    if manifest is None:
        told, _, tip = (newer or "is no manifest of a publish; publish again").partition("; ")
        yield _said(path, "error", "newer-schema" if newer else "no-manifest", told, tip)
        return
    if not manifest.inputs:
        told = "was written by an older Spindlewise, which kept no digests of the catalog's files"
        yield _said(path, "warning", "older-manifest", told, "publish again")
    for name, recorded in manifest.inputs.items():
        yield from _input(catalog, name, recorded)
    for name, sha256 in manifest.outputs.items():
        found = digest_of(out / name)
        if found is None:
            yield _said(out / name, "error", "page-missing", "is not there", "publish again")
        elif found.sha256 != sha256:
            yield _said(out / name, "error", "page-changed", "is not what was published", "publish again")


def _input(catalog: Path, name: str, recorded: FileDigest) -> Iterator[Problem]:
    path = catalog / name
    grows = name in GROWING
    level: Level = "error" if grows or name.startswith("bench/") else "warning"
    found = digest_of(path, recorded.size_bytes if grows else None)
    if found is None:
        yield _said(path, level, "input-missing", "is not there; the site was made from it", _COPY)
    elif found.size_bytes < recorded.size_bytes and grows:
        told = f"is {found.size_bytes} bytes long, {recorded.size_bytes} when the site was published"
        yield _said(path, level, "log-shortened", told, _COPY)
    elif found != recorded:
        rule = "log-changed" if grows else "recording-changed" if level == "error" else "input-changed"
        part = f"its first {recorded.size_bytes} bytes are" if grows else "is"
        yield _said(path, level, rule, f"{part} not as when the site was published", _COPY)


def _said(path: Path, level: Level, rule: str, message: str, tip: str) -> Problem:
    return Problem(Place(path.as_posix(), 1, 1), level, rule, message, tip)
