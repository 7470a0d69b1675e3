"""Publishing: everything gathered first, then what changed is written and stale pages are removed."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.durable import CannotWrite, reason, remove_leftovers, replace_file
from spindlewise.catalog.file_digest import digests
from spindlewise.site.job import Progress, silent
from spindlewise.site.manifest import NAME, Manifest, newer_manifest, read_manifest, sha256
from spindlewise.site.pages import gather
from spindlewise.site.picture import pictures_in


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
    unless its bytes are no longer those that were written. The manifest is written last; it names the
    catalog's files too, by size and SHA-256, as they stand when the pages have been made.
    Raises CannotWrite where the folder or a file cannot be written or read, and where a newer program
    published into `out`.
    """
    before = _published_before(out)
    made = gather(catalog, buyers, day, progress, _kept_pictures(out, before))
    hashes = {path: sha256(data) for path, data in made.items()}
    manifest = Manifest(day.isoformat(), digests(catalog.folder), hashes)
    _refuse_links(out, made)
    for folder in sorted({(out / path).parent for path in made}):
        remove_leftovers(folder)
    changed = [path for path, data in made.items() if _write(out, path, data)]
    removed, kept = _remove_stale(out, before, made)
    if _write(out, NAME, manifest.to_bytes()):
        changed.append(NAME)
    return Published(tuple(changed), removed, kept, len(made) + 1 - len(changed))


def _published_before(out: Path) -> Manifest | None:
    data = _read(out / NAME) or b""
    newer = newer_manifest(data)
    if newer is not None:
        raise CannotWrite(f"{out / NAME}: {newer}")
    return read_manifest(data)


def _kept_pictures(out: Path, before: Manifest | None) -> dict[str, str]:
    """The pictures of the pages that stand as an earlier publish wrote them."""
    found: dict[str, str] = {}
    for path, written in sorted(before.outputs.items()) if before else ():
        if path.endswith(".html") and not _through_link(out, path):
            data = _read(out / path)
            if data is not None and sha256(data) == written:
                found.update(pictures_in(data.decode()))
    return found


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
        if data is not None and sha256(data) != written:
            kept.append(path)
            continue
        try:
            (out / path).unlink(missing_ok=True)
            _remove_empty(out, (out / path).parent)
        except OSError as error:
            raise CannotWrite(f"{out / path}: {reason(error)}") from error
        if data is not None:
            removed.append(path)
    return tuple(removed), tuple(kept)


def _through_link(out: Path, path: str) -> bool:
    parts = Path(path)
    return any((out / part).is_symlink() for part in (parts, *parts.parents) if part.parts)


def _remove_empty(out: Path, folder: Path) -> None:
    while folder != out and folder.is_dir() and not any(folder.iterdir()):
        folder.rmdir()
        folder = folder.parent
