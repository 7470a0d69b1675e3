"""Gather everything: each page and download of the site as bytes in memory, before anything is written."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from spindlewise.answer.desk import Desk
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.file_digest import FileDigest
from spindlewise.site.facts import Facts
from spindlewise.site.job import Progress, silent
from spindlewise.site.kept_site import KeptSite
from spindlewise.site.manifest import sha256
from spindlewise.site.part import Part
from spindlewise.site.parts import TRAIL, Sources, site_parts
from spindlewise.site.picture import draw_all
from spindlewise.site.rests_on import RestsOn
from spindlewise.site.single_file import single_file


@dataclass(frozen=True, slots=True)
class Whole:
    """Every file of a site by its path, sorted.

    `digests` has the SHA-256 of all; `fresh` the bytes of those that were made. The others need not be: what
    they rest on is as it was, and they stand as they were written. `parts` says of each part what it rests
    on, and its files.
    """

    fresh: Mapping[str, bytes]
    digests: Mapping[str, str]
    parts: Mapping[str, tuple[str, Mapping[str, str]]]
    bench: Mapping[str, FileDigest]
    """The files of the bench as they stood before the first page was made."""


def gather(
    catalog: Catalog, buyers: Mapping[str, Buyer], day: date, progress: Progress = silent
) -> dict[str, bytes]:
    """Every file of the site by its path, sorted; same catalog, buyers and day, same bytes."""
    return dict(gather_whole(catalog, buyers, day, progress).fresh)


def single(catalog: Catalog, buyers: Mapping[str, Buyer], day: date, progress: Progress = silent) -> bytes:
    """The same as one HTML file."""
    facts = Facts(Desk(catalog, day), buyers)
    sources = Sources(facts, RestsOn(catalog, buyers, day), KeptSite())
    return single_file(_made(sources, progress, {}).fresh, facts.frame)


def gather_whole(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    day: date,
    progress: Progress = silent,
    kept: KeptSite | None = None,
    pages: Mapping[str, str] | None = None,
) -> Whole:
    """The same, without making what is kept and still holds.

    `pages` are those of an earlier publish by their SHA-256: pictures that stand in them need not be drawn
    again. Raises CannotWrite where a file that stands cannot be read.
    """
    kept = KeptSite() if kept is None else kept
    on = RestsOn(catalog, buyers, day)
    facts = Facts(Desk(catalog, day), buyers, kept.last(TRAIL, on.all_but_prices(TRAIL)) or ())
    return _made(Sources(facts, on, kept), progress, pages or {})


def _made(sources: Sources, progress: Progress, pages: Mapping[str, str]) -> Whole:
    kept, parts = sources.kept, site_parts(sources)
    standing = {part.name: kept.still_stand(part.name, part.rests_on) for part in parts}
    stale = [part for part in parts if standing[part.name] is None]
    pictures = [picture for part in stale for picture in part.pictures()]
    old = kept.pictures(_looked_through(kept, stale, pages)) if pictures else {}
    drawn = draw_all(pictures, old, progress)
    jobs = [(part, job) for part in stale for job in part.jobs(drawn)]
    files = {part.name: dict(standing[part.name] or {}) for part in parts}
    fresh: dict[str, bytes] = {}
    for (part, job), _ in zip(jobs, progress([job for _, job in jobs], len(jobs)), strict=True):
        fresh[job.path] = job.make()
        files[part.name][job.path] = sha256(fresh[job.path])
    return Whole(
        fresh=dict(sorted(fresh.items())),
        digests=dict(sorted((path, digest) for own in files.values() for path, digest in own.items())),
        parts={part.name: (part.rests_on, files[part.name]) for part in parts},
        bench=sources.on.bench,
    )


def _looked_through(kept: KeptSite, stale: Sequence[Part], pages: Mapping[str, str]) -> Mapping[str, str]:
    """The old pages in which pictures of these parts may stand: all, where not each part's own are known."""
    if not all(part.name in kept.files for part in stale):
        return pages
    own = {path for part in stale for path in kept.files[part.name][1]}
    return {path: digest for path, digest in pages.items() if path in own}
