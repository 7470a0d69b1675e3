"""Everything on the page of one ride: what was said of it, its pictures, its files, what a script draws."""

import math
from dataclasses import dataclass
from datetime import date
from typing import Any

import numpy as np

from spindlewise.answer.bench_archive import PairLine, ride_line
from spindlewise.answer.bench_kept import KeptRide
from spindlewise.answer.bench_ride import RideReport
from spindlewise.bench.alignment import Aligned
from spindlewise.bench.segments import LEFT_OUT
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.blocks import Bullets, Section
from spindlewise.render.words_ride import ride_sections
from spindlewise.render.words_ride_meters import time_text
from spindlewise.site.chart_traces import stroke
from spindlewise.site.figured import Figured
from spindlewise.site.picture import Picture
from spindlewise.site.ride_figures import overlay, pair_figures, parts, residual, sprints

MOST_NUMBERS = 100_000
"""So many watts a page carries for the script: five hours of five meters by the second, longer in means."""
MOST_DRAWN = 6
"""So many pairs have pictures of their own; beyond, those with the reference do."""


@dataclass(frozen=True, slots=True)
class RidePage:
    """One ride as its page and the index show it; `state` is counts, void or bedding-in.

    `zoom` is what the script draws from, None where nothing could be read.
    """

    id: str
    path: str
    title: str
    date: date
    state: str
    because: str
    generated: bool
    products: tuple[str, ...]
    lines: tuple[PairLine, ...]
    opening: tuple[Section, ...]
    overlay: tuple[Figured, ...]
    parts: tuple[tuple[str, Figured], ...]
    residual: tuple[Figured, ...]
    pairs: tuple[tuple[Section, tuple[Figured, ...], Section], ...]
    """Of each pair averages and sentences, the pictures, and the tables that go further."""
    sprints: tuple[Figured, ...]
    rest: tuple[Section, ...]
    files: tuple[tuple[str, str, int, str], ...]
    """Meter, file as the catalog names it, rows, SHA-256."""
    zoom: dict[str, Any] | None

    @property
    def pictures(self) -> list[Picture]:
        """Every picture of the page."""
        figures = [*self.overlay, *self.residual, *self.sprints, *(figure for _, figure in self.parts)]
        figures += [figure for _, own, _ in self.pairs for figure in own]
        return [figure.picture for figure in figures]


def ride_page(catalog: Catalog, kept: KeptRide) -> RidePage:
    """Gather the page; nothing of the recordings is kept but what is drawn."""
    report, aligned = kept.report, kept.report.aligned
    sheet = report.sheet
    sections = {s.name: s for s in ride_sections(catalog, report, kept.sessions, kept.records)}
    pairs = tuple(
        _pair(sections[f"pair-{number}"], figures)
        for number, figures in enumerate(_pair_figures(report, aligned), 1)
        if f"pair-{number}" in sections
    )
    return RidePage(
        id=sheet.id,
        path=f"bench/rides/{kept.folder.rpartition('/')[2]}.html",
        title=sheet.title,
        date=sheet.date,
        state=sheet.standing.state,
        because=report.void or "",
        generated=sheet.made == "generated",
        products=tuple(
            m.product for m in sheet.meters if m.product != "not applicable" and m.product in catalog.products
        ),
        lines=ride_line(report).pairs,
        opening=tuple(sections[name] for name in ("head", "short") if name in sections),
        overlay=() if aligned is None else (overlay(report, aligned),),
        parts=() if aligned is None else parts(report, aligned),
        residual=() if aligned is None else residual(report, aligned),
        pairs=pairs,
        sprints=() if aligned is None else sprints(report, aligned),
        rest=tuple(
            sections[n] for n in ("three", "segments", "recordings", "noted", "product") if n in sections
        ),
        files=tuple((r.name, f"{r.source}", r.rows, r.sha256) for r in report.recordings),
        zoom=None if aligned is None else _zoom(report, aligned),
    )


def _pair(section: Section, figures: tuple[Figured, ...]) -> tuple[Section, tuple[Figured, ...], Section]:
    """The pictures stand between what is said and the tables that have all their figures."""
    said = 1 + next(at for at, block in enumerate(section.blocks) if isinstance(block, Bullets))
    return (
        Section(section.name, section.blocks[:said]),
        figures,
        Section(f"{section.name}-tables", section.blocks[said:]),
    )


def _pair_figures(report: RideReport, aligned: Aligned | None) -> list[tuple[Figured, ...]]:
    if aligned is None:
        return []
    few = len(report.pairs) <= MOST_DRAWN
    return [
        pair_figures(report, aligned, number, pair)
        if few or aligned.reference in (pair.first, pair.second)
        else ()
        for number, pair in enumerate(report.pairs, 1)
    ]


def _zoom(report: RideReport, aligned: Aligned) -> dict[str, Any]:
    """Whole watts of each meter, second by second; None where nothing was recorded."""
    step = max(math.ceil(aligned.power_w.size / MOST_NUMBERS), 1)
    return {
        "names": list(aligned.names),
        "strokes": [stroke(aligned.names, name)[0] for name in aligned.names],
        "dashes": [" ".join(map(str, stroke(aligned.names, name)[1])) for name in aligned.names],
        "start_s": float(aligned.seconds[0]),
        "step_s": step,
        "watts": [_thinned(row, step) for row in aligned.power_w],
        "parts": [
            [
                f"{each.segment.name or each.segment.kind}, {time_text(each.segment.start_s)}",
                each.segment.start_s,
                each.segment.end_s,
            ]
            for each in report.segments
            if each.segment.kind not in LEFT_OUT
        ],
    }


def _thinned(row: np.ndarray[Any, np.dtype[np.float64]], step: int) -> list[int | None]:
    """The means of so many seconds each, in whole watts."""
    found: list[int | None] = []
    for at in range(0, len(row), step):
        known = row[at : at + step]
        known = known[np.isfinite(known)]
        found.append(round(float(known.mean())) if len(known) else None)
    return found
