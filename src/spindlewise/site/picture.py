"""A picture: what it shows, how it is drawn, its words; drawn once and kept by what it shows."""

import hashlib
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.metadata import version
from multiprocessing import get_context
from os import cpu_count
from typing import Any

from spindlewise.site.chart_svg import at_home
from spindlewise.site.draughtsman import svg_of
from spindlewise.site.job import Job, Progress
from spindlewise.site.templating import chart_sources

WORTH_A_SECOND_PROCESS = 150
"""A process of its own takes about a second to be ready; so many charts take several."""

DRAWN = re.compile(r'<svg class="chart" data-drawn="([0-9a-f]{32})".*?</svg>', re.S)


@dataclass(frozen=True, slots=True)
class Picture:
    """One chart; `specify` gives its Vega-Lite specification from `shown`, which is plain frozen data.

    `specify` stands at the top of a module, so that another process finds it. `name` makes the ids in a page.
    """

    name: str
    title: str
    description: str
    specify: Callable[[Any], dict[str, Any]]
    shown: Any

    @property
    def key(self) -> str:
        """What the picture is kept by: all that it shows, and the program and libraries that draw it."""
        told = (self.name, self.title, self.description, self.specify.__name__, self.shown)
        return hashlib.sha256(f"{_drawn_by()}{told!r}".encode()).hexdigest()[:32]


@cache
def _drawn_by() -> str:
    """A digest of the chart code and of the versions of what it draws with."""
    told = f"{version('altair')} {version('vl-convert-python')} {chart_sources()}"
    return hashlib.sha256(told.encode()).hexdigest()


@lru_cache(maxsize=1024)
def drawn(picture: Picture) -> str:
    """The picture as an SVG element for a page: text as text, the page's colours, same data same bytes."""
    return _at_home(picture, svg_of(picture.specify(picture.shown)))


def _at_home(picture: Picture, svg: str) -> str:
    return at_home(svg, picture.name, picture.key, picture.title, picture.description)


def pictures_in(page: str) -> dict[str, str]:
    """The charts that stand in a page of ours, by their keys."""
    return {found[1]: found[0] for found in DRAWN.finditer(page)}


def draw_all(pictures: Iterable[Picture], kept: Mapping[str, str], progress: Progress) -> dict[str, str]:
    """Every picture by its key: those that are kept already as they are, the others drawn now."""
    wanted = {picture.key: picture for picture in pictures}
    missing = {key: picture for key, picture in wanted.items() if key not in kept}
    fresh: dict[str, str] = {}
    with _draughtsmen(len(missing)) as draw:
        made = draw(list(missing.values()))
        jobs = (Job(picture.title, lambda: b"") for picture in missing.values())
        for key, _ in zip(missing, progress(jobs, len(missing)), strict=True):
            fresh[key] = next(made)
    return {key: fresh[key] if key in fresh else kept[key] for key in wanted}


Draw = Callable[[list[Picture]], Iterator[str]]


@contextmanager
def _draughtsmen(count: int) -> Iterator[Draw]:
    """Whoever draws so many pictures: this process, or one for each core where it pays."""
    processes = min(cpu_count() or 1, count // WORTH_A_SECOND_PROCESS + 1)
    if processes == 1:
        yield lambda pictures: map(drawn, pictures)
        return
    # a fork would copy the renderer's threads in the middle of what they do
    with ProcessPoolExecutor(processes, get_context("spawn")) as pool:
        yield lambda pictures: map(_at_home, pictures, _drawn_by_others(pool, pictures))


def _drawn_by_others(pool: ProcessPoolExecutor, pictures: list[Picture]) -> Iterator[str]:
    """The drawings of a pool, which is sent specifications alone: to draw, it imports nothing of ours."""
    return pool.map(svg_of, (picture.specify(picture.shown) for picture in pictures), chunksize=8)
