"""The page of what changed lately: each day with its changes, and what they did to the buyers' picks."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby

from spindlewise.answer.receptions import Receptions
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.site.change_events import Event, events
from spindlewise.site.pick_moves import Move, Step, pick_steps
from spindlewise.site.touched import touched

DAYS = 90
"""So far back the page goes."""


@dataclass(frozen=True, slots=True)
class ChangedDay:
    """One day on which something changed."""

    day: date
    events: tuple[Event, ...]
    moves: tuple[Move, ...]

    @property
    def anchor(self) -> str:
        """The id of the day's section."""
        return f"day-{self.day.isoformat()}"


@dataclass(frozen=True, slots=True)
class ChangesPage:
    """What the page and the feed show, the newest day first."""

    since: date
    days: tuple[ChangedDay, ...]
    trail: tuple[Step, ...] = ()
    """How the picks came about, so that the next publish need not go over former days."""

    @property
    def moved(self) -> tuple[ChangedDay, ...]:
        """The days on which a pick moved."""
        return tuple(day for day in self.days if day.moves)


def changes_page(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    day: date,
    trail: Sequence[Step] = (),
    receptions: Receptions | None = None,
) -> ChangesPage:
    """Gather the page: the last 90 days up to the day; `trail` is the one of an earlier page.

    `receptions` may be shared with desks on the catalog.
    """
    since = day - timedelta(DAYS)
    by_day = {when: tuple(found) for when, found in groupby(events(catalog, since, day), key=lambda e: e.day)}
    steps = pick_steps(catalog, buyers, touched(catalog, since, day), trail, receptions)
    moves = {step.day: step.moves for step in steps}
    days = sorted({*by_day, *(when for when, found in moves.items() if found)}, reverse=True)
    return ChangesPage(
        since, tuple(ChangedDay(when, by_day.get(when, ()), moves.get(when, ())) for when in days), steps
    )
