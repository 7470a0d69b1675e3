"""What the last publish into a folder found out, kept for the next: files and what they rest on, things told.

It lies on the shelf (`catalog/shelf.py`), not in the site. Each thing is kept under a digest of all that it
rests on; a file counts only if it still stands in the site with the bytes that were written. Of a buyer
nothing is kept but what the public pages say, and digests.
"""

import hashlib
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar, cast

from spindlewise.catalog.packing import NotOurs, packed, unpacked
from spindlewise.catalog.shelf import Shelf
from spindlewise.site.manifest import sha256, stays_inside
from spindlewise.site.picture import pictures_in
from spindlewise.site.site_files import read_file, through_link

T = TypeVar("T")


@dataclass(slots=True)
class KeptSite:
    """The site that stands in `out`, and what is kept of how it was made; empty without either.

    `files` gives for each part what it rested on and its files by path with their SHA-256; `things` for each
    thing that was told what it rested on and its bytes. `anew` collects what is to be kept this time.
    """

    out: Path | None = None
    files: Mapping[str, tuple[str, Mapping[str, str]]] = field(default_factory=dict)
    things: Mapping[str, tuple[str, bytes]] = field(default_factory=dict)
    anew: dict[str, tuple[str, bytes]] = field(default_factory=dict)

    def last(self, name: str, rests_on: str) -> Any:
        """A thing as it was kept, where it rests on the same, and it is kept again; else None."""
        if not self.carry(name, rests_on):
            return None
        try:
            return unpacked(self.things[name][1])
        except NotOurs:
            del self.anew[name]
            return None

    def carry(self, name: str, rests_on: str) -> bool:
        """Keep a thing again that rests on the same, whoever asks for it or not; say if there is one."""
        before = self.things.get(name)
        if before is None or before[0] != rests_on:
            return False
        self.anew[name] = before
        return True

    def keep(self, name: str, rests_on: str, thing: object) -> None:
        """Keep a thing for the next publish."""
        self.anew[name] = (rests_on, packed(thing))

    def thing(self, name: str, rests_on: str, work: Callable[[], T]) -> T:
        """What `work` gives, which is never None: as it was kept, or worked out now."""
        found = self.last(name, rests_on)
        if found is None:
            found = work()
            self.keep(name, rests_on, found)
        return cast(T, found)

    def still_stand(self, part: str, rests_on: str) -> Mapping[str, str] | None:
        """The files of a part that rests on the same, if each stands as it was written; else None.

        Raises CannotWrite where one of them is there and cannot be read.
        """
        before = self.files.get(part)
        if self.out is None or before is None or before[0] != rests_on:
            return None
        return before[1] if all(self._stands(path, digest) for path, digest in before[1].items()) else None

    def _stands(self, path: str, digest: str) -> bool:
        data = self._read(path)
        return data is not None and sha256(data) == digest

    def _read(self, path: str) -> bytes | None:
        """A file of the site; None where there is none, or where a link leads to it."""
        assert self.out is not None  # noqa: S101  # only a site that stands somewhere has files
        return None if through_link(self.out, path) else read_file(self.out / path)

    def pictures(self, pages: Mapping[str, str]) -> dict[str, str]:
        """The pictures, by their keys, of those pages that stand with these digests."""
        found: dict[str, str] = {}
        for path, digest in sorted(pages.items()):
            data = self._read(path) if path.endswith(".html") else None
            if data is not None and sha256(data) == digest:
                found.update(pictures_in(data.decode()))
        return found


def take_site(shelf: Shelf | None, out: Path) -> KeptSite:
    """What is kept of the site in `out`; nothing where nothing can be trusted."""
    parts = None if shelf is None else shelf.take(_name(out))
    try:
        index, *things = parts or [b"{}"]
        whole = json.loads(index)
        named = whole.get("things", [])
        return KeptSite(
            out,
            {name: (rests_on, _inside(files)) for name, (rests_on, files) in whole.get("files", {}).items()},
            {name: (rests_on, data) for (name, rests_on), data in zip(named, things, strict=True)},
        )
    except (ValueError, TypeError, AttributeError):
        return KeptSite(out)


def put_site(
    shelf: Shelf | None, kept: KeptSite, out: Path, files: Mapping[str, tuple[str, Mapping[str, str]]]
) -> None:
    """Keep what this publish found out, in place of what the last one did."""
    if shelf is None:
        return
    named = [(name, rests_on) for name, (rests_on, _) in kept.anew.items()]
    index = json.dumps({"files": files, "things": named}).encode()
    shelf.put(_name(out), [index, *(data for _, data in kept.anew.values())])


def _inside(files: Mapping[str, str]) -> Mapping[str, str]:
    """The files, if each is a plain name in the site; raises ValueError."""
    if not all(stays_inside(path) for path in files):
        raise ValueError("a name leads out of the site")
    return files


def _name(out: Path) -> str:
    """One file on the shelf for each folder that is published into."""
    return "site-" + hashlib.sha256(str(out.resolve()).encode(errors="surrogatepass")).hexdigest()
