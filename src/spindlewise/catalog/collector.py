"""Python's search for garbage, left out while a catalog comes into memory."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collector_paused() -> Iterator[None]:
    """Python looks for garbage among all that is kept, again and again; what is read here is kept.

    Of a thousand product files reading takes half as long without it.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            # all of it counts as old, else it would be looked through at once
            gc.freeze()
            gc.unfreeze()
            gc.enable()
