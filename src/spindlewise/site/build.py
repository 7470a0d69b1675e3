"""Publishing: everything gathered first, then what changed is written and stale pages are removed."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.durable import CannotWrite, reason, remove_leftovers, replace_file
from spindlewise.catalog.file_digest import digests
from spindlewise.catalog.shelf import Shelf
from spindlewise.site.job import Progress, silent
from spindlewise.site.kept_site import KeptSite, put_site, take_site
from spindlewise.site.manifest import NAME, Manifest, newer_manifest, read_manifest, sha256
from spindlewise.site.pages import gather_whole, single
from spindlewise.site.renewal import NotAtOneStroke, renew
from spindlewise.site.rests_on import bench_digests
from spindlewise.site.site_files import read_file, through_link


@dataclass(frozen=True, slots=True)
class Published:
    """What a publish did, by relative path; `kept` names stale files that somebody had changed."""

    changed: tuple[str, ...]
    removed: tuple[str, ...]
    kept: tuple[str, ...]
    unchanged: int
    file_by_file: str = ""
    """Why the site was not put in place at one stroke; empty where it was, or where nothing changed."""

    @property
    def files(self) -> int:
        """How many files the site has, its manifest among them."""
        return len(self.changed) + self.unchanged


def publish(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    day: date,
    out: Path,
    progress: Progress = silent,
    shelf: Shelf | None = None,
) -> Published:
    """Write the site of a catalog on a day into `out`, and touch nothing else that stands there.

    All pages are made before the first is written, so a page that cannot be made leaves the old site whole.
    The new site is written beside the old one and takes its place at one stroke; where the system cannot do
    that, file by file, the manifest last. A file with the same bytes is not touched. What an earlier publish
    wrote and this one does not is removed, unless its bytes are no longer those that were written. The
    manifest names the catalog's files too, by size and SHA-256, as they stand when the pages have been made.
    With a shelf, pages are not even made that rest on the same as those that stand there.
    Raises CannotWrite where the folder or a file cannot be written or read, and where a newer program
    published into `out`.
    """
    plan = _plan(catalog, buyers, day, out, progress, shelf)
    found = plan.found
    _tidy(out, (*plan.digests, NAME))
    if found.changed or found.removed:
        new = {path: plan.files[path] for path in found.changed}
        same = [path for path in (*plan.digests, NAME) if path not in new]
        try:
            renew(out, new, plan.gone, same)
        except NotAtOneStroke as because:
            _file_by_file(out, new, plan.gone)
            found = replace(found, file_by_file=str(because))
    if plan.steady:
        put_site(shelf, plan.kept, out, plan.parts)
    return found


def compared(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    day: date,
    out: Path,
    progress: Progress = silent,
    shelf: Shelf | None = None,
) -> Published:
    """What `publish` would do now, with nothing done. Raises CannotWrite as it does."""
    return _plan(catalog, buyers, day, out, progress, shelf).found


def publish_single(
    catalog: Catalog, buyers: Mapping[str, Buyer], day: date, file: Path, progress: Progress = silent
) -> Published:
    """Write the whole site as one HTML file; the same bytes are not written anew. Raises CannotWrite."""
    data = single(catalog, buyers, day, progress)
    if not file.is_symlink() and read_file(file) == data:
        return Published((), (), (), 1)
    remove_leftovers(file.parent)
    _write(file, data)
    return Published((file.name,), (), (), 0)


def compared_single(
    catalog: Catalog, buyers: Mapping[str, Buyer], day: date, file: Path, progress: Progress = silent
) -> Published:
    """What `publish_single` would do now, with nothing done. Raises CannotWrite as it does."""
    same = read_file(file) == single(catalog, buyers, day, progress)
    return Published((), (), (), 1) if same else Published((file.name,), (), (), 0)


@dataclass(frozen=True, slots=True)
class _Plan:
    """What a publish is going to do: the files that were made, the digests of all, and what is to go."""

    found: Published
    files: Mapping[str, bytes]
    digests: Mapping[str, str]
    gone: tuple[str, ...]
    kept: KeptSite
    parts: Mapping[str, tuple[str, Mapping[str, str]]]
    steady: bool
    """Whether the bench's files, which are read while pages are made, stayed as they were."""


def _plan(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    day: date,
    out: Path,
    progress: Progress,
    shelf: Shelf | None,
) -> _Plan:
    before = _published_before(out)
    kept = take_site(shelf, out)
    pages = before.outputs if before else {}
    whole = gather_whole(catalog, buyers, day, progress, kept, pages)
    inputs = digests(catalog.folder)
    manifest = Manifest(day.isoformat(), inputs, whole.digests).to_bytes()
    files = {**whole.fresh, NAME: manifest}
    _refuse_links(out, (*whole.digests, NAME))
    changed = tuple(path for path, data in files.items() if read_file(out / path) != data)
    gone, left = _stale(out, before, whole.digests)
    removed = tuple(path for path in gone if read_file(out / path) is not None)
    found = Published(changed, removed, left, len(whole.digests) + 1 - len(changed))
    steady = bench_digests(inputs) == whole.bench
    return _Plan(found, files, whole.digests, gone, kept, whole.parts, steady)


def _tidy(out: Path, names: Iterable[str]) -> None:
    """Remove what killed programs left beside the site and in it."""
    remove_leftovers(out.resolve().parent, out.resolve().name)
    for folder in sorted({(out / path).parent for path in names}):
        remove_leftovers(folder)


def _published_before(out: Path) -> Manifest | None:
    data = read_file(out / NAME) or b""
    newer = newer_manifest(data)
    if newer is not None:
        raise CannotWrite(f"{out / NAME}: {newer}")
    return read_manifest(data)


def _refuse_links(out: Path, made: Collection[str]) -> None:
    """A page, or a folder of the site, that is a link could lead anywhere."""
    folders = {parent.as_posix() for path in made for parent in Path(path).parents if parent.parts}
    for name in sorted({*made, *folders}):
        if (out / name).is_symlink():
            raise CannotWrite(f"{out / name}: it is a link, and links are not followed when writing")


def _file_by_file(out: Path, new: Mapping[str, bytes], gone: Iterable[str]) -> None:
    for path, data in new.items():
        if path != NAME:
            _write(out / path, data)
    for path in gone:
        try:
            (out / path).unlink(missing_ok=True)
            _remove_empty(out, (out / path).parent)
        except OSError as error:
            raise CannotWrite(f"{out / path}: {reason(error)}") from error
    if NAME in new:
        _write(out / NAME, new[NAME])


def _write(target: Path, data: bytes) -> None:
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{target.parent}: {reason(error)}") from error
    replace_file(target, data)


def _stale(
    out: Path, before: Manifest | None, made: Collection[str]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What only an earlier publish wrote: what of it goes, and what somebody has changed and so stays."""
    gone: list[str] = []
    kept: list[str] = []
    for path, written in sorted(before.outputs.items()) if before else ():
        if path in made or path == NAME or through_link(out, path):
            continue
        data = read_file(out / path)
        (gone if data is None or sha256(data) == written else kept).append(path)
    return tuple(gone), tuple(kept)


def _remove_empty(out: Path, folder: Path) -> None:
    while folder != out and folder.is_dir() and not any(folder.iterdir()):
        folder.rmdir()
        folder = folder.parent
