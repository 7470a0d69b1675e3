"""A job: one file of the site, or one picture, and how to make it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Job:
    """One file of the site by its path, or one picture by its title, and how to make it."""

    path: str
    make: Callable[[], bytes]


Progress = Callable[[Iterable[Job], int], Iterable[Job]]


def silent(jobs: Iterable[Job], _total: int) -> Iterable[Job]:
    """No progress shown."""
    return jobs
