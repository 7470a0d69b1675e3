"""Publishing: everything gathered first, then what changed is written and stale pages are removed."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.durable import CannotWrite, reason, replace_file
from spindlewise.site.manifest import NAME, Manifest, input_hashes, read_manifest, sha256
from spindlewise.site.pages import Progress, gather, silent


@dataclass(frozen=True, slots=True)
class Published:
    """What a publish did, by relative path; `kept` names stale files that somebody had changed."""

    changed: tuple[str, ...]
    removed: tuple[str, ...]
    kept: tuple[str, ...]
    unchanged: int

    @property
    def files(self) -> int:
        """How many files the site has, its manifest among them."""
        return len(self.changed) + self.unchanged


def publish(
    catalog: Catalog, buyers: Mapping[str, Buyer], day: date, out: Path, progress: Progress = silent
) -> Published:
    """Write the site of a catalog on a day into `out`, and touch nothing else that stands there.

    All pages are made before the first is written, so a page that cannot be made leaves the old site whole.
    A file with the same bytes is not touched. What an earlier publish wrote and this one does not is removed,
    unless its bytes are no longer those that were written. The manifest is written last.
    Raises CannotWrite where the folder or a file cannot be written or read.
    """
    made = gather(catalog, buyers, day, progress)
    hashes = {path: sha256(data) for path, data in made.items()}
    manifest = Manifest(day.isoformat(), input_hashes(catalog, buyers, day), hashes)
    before = read_manifest(_read(out / NAME) or b"")
    _refuse_links(out, made)
    changed = [path for path, data in made.items() if _write(out, path, data)]
    removed, kept = _remove_stale(out, before, made)
    if _write(out, NAME, manifest.to_bytes()):
        changed.append(NAME)
    return Published(tuple(changed), removed, kept, len(made) + 1 - len(changed))


def _refuse_links(out: Path, made: Mapping[str, bytes]) -> None:
    """A folder of the site that is a link could lead anywhere."""
    for folder in sorted({parent for path in made for parent in Path(path).parents if parent.parts}):
        if (out / folder).is_symlink():
            raise CannotWrite(f"{out / folder}: it is a link, and links are not followed when writing")


def _write(out: Path, path: str, data: bytes) -> bool:
    target = out / path
    if not target.is_symlink() and _read(target) == data:
        return False
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{target.parent}: {reason(error)}") from error
    replace_file(target, data)
    return True


def _read(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as error:
        raise CannotWrite(f"{path}: {reason(error)}") from error


def _remove_stale(
    out: Path, before: Manifest | None, made: Mapping[str, bytes]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    removed, kept = [], []
    for path, written in sorted(before.outputs.items()) if before else ():
        if path in made or path == NAME or _through_link(out, path):
            continue
        data = _read(out / path)
        if data is None:
            continue
        if sha256(data) != written:
            kept.append(path)
            continue
        (out / path).unlink()
        removed.append(path)
        _remove_empty(out, (out / path).parent)
    return tuple(removed), tuple(kept)


def _through_link(out: Path, path: str) -> bool:
    parts = Path(path)
    return any((out / part).is_symlink() for part in (parts, *parts.parents) if part.parts)


def _remove_empty(out: Path, folder: Path) -> None:
    while folder != out and not any(folder.iterdir()):
        folder.rmdir()
        folder = folder.parent
