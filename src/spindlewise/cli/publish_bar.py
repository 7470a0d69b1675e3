"""What a terminal shows while a site is made: that figures are worked out, then a bar for each stage."""

import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from spindlewise.site.job import Job, Progress, silent

STAGES = ("Drawing pictures", "Making pages")
"""What the stages of a publish are called, in their order; whatever comes after is called as the last one."""


@contextmanager
def publish_bar() -> Iterator[Progress]:
    """The progress of one publish on stderr; nothing is shown where stderr is no terminal.

    Whatever ends the block, Ctrl-C too, the bar goes and the cursor comes back.
    """
    if not sys.stderr.isatty():
        yield silent
        return
    from rich.console import Console
    from rich.progress import track

    console = Console(stderr=True)
    begun = console.status("Working out the figures")
    stages = iter(STAGES)

    def shown(jobs: Iterable[Job], total: int) -> Iterable[Job]:
        begun.stop()
        return track(jobs, next(stages, STAGES[-1]), total, console=console, transient=True)

    with begun:
        yield shown
