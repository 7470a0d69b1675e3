"""A part of the site: files that rest on the same things, and so stay together or are made together."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from spindlewise.site.job import Job
from spindlewise.site.picture import Picture

Drawn = Mapping[str, str]
"""Pictures as SVG elements, by their keys."""


def no_pictures() -> Iterable[Picture]:
    """The pictures of a part that has none."""
    return ()


@dataclass(frozen=True, slots=True)
class Part:
    """Some files: what they rest on, the pictures in them, how to make them; made when asked for."""

    name: str
    rests_on: str
    jobs: Callable[[Drawn], list[Job]]
    pictures: Callable[[], Iterable[Picture]] = no_pictures
