"""From the bench: an index, a page for each ride, the sessions of each product, weighings, battery hours."""

from collections.abc import Mapping
from dataclasses import dataclass

from spindlewise.answer.bench_kept import (
    HOURS,
    SESSIONS,
    WEIGHINGS,
    KeptRide,
    kept_hours,
    kept_rides,
    kept_sessions,
    kept_weighings,
)
from spindlewise.answer.bench_session import ProductSessions, product_sessions
from spindlewise.answer.desk import Desk
from spindlewise.catalog.session_row import SessionRow
from spindlewise.render.blocks import Block, Bullets, Column, Section, Table
from spindlewise.render.naming import naming
from spindlewise.render.words_hours import hours_blocks
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.render.words_session import drift_sentences, record_sentence, sessions_table
from spindlewise.render.words_weigh import weigh_blocks
from spindlewise.site.chart_drift import DriftShown, SessionShown, drift_chart
from spindlewise.site.figured import Figured
from spindlewise.site.picture import Picture
from spindlewise.site.ride_page import RidePage, ride_page
from spindlewise.units import number_text, percent_text

INDEX, SESSIONS_PAGE, WEIGHINGS_PAGE, HOURS_PAGE = (
    "bench/index.html",
    "bench/sessions.html",
    "bench/weighings.html",
    "bench/hours.html",
)


@dataclass(frozen=True, slots=True)
class SessionsShown:
    """The sessions of one product: table, what they come to, and the drift as a picture where one is told."""

    product: str
    name: str
    section: Section
    drift: tuple[Figured, ...]


@dataclass(frozen=True, slots=True)
class BenchPages:
    """All that the bench's pages show. `weighings` and `hours` are None where the catalog keeps none."""

    rides: tuple[RidePage, ...]
    unread: tuple[str, ...]
    """Folders of rides whose sheet cannot be read."""
    sessions: tuple[SessionsShown, ...]
    weighings: Section | None
    hours: Section | None

    @property
    def pictures(self) -> list[Picture]:
        """Every picture of these pages."""
        found = [picture for ride in self.rides for picture in ride.pictures]
        return found + [figure.picture for each in self.sessions for figure in each.drift]

    @property
    def by_product(self) -> Mapping[str, tuple[RidePage, ...]]:
        """The rides in which a product was ridden."""
        products = {product for ride in self.rides for product in ride.products}
        return {
            name: tuple(ride for ride in self.rides if name in ride.products) for name in sorted(products)
        }

    @property
    def with_sessions(self) -> frozenset[str]:
        """The products that have sessions."""
        return frozenset(each.product for each in self.sessions)


def bench_pages(desk: Desk) -> BenchPages:
    """Work everything out; of each ride only what is drawn stays in memory."""
    rides, unread = [], []
    for kept in kept_rides(desk):
        if isinstance(kept, KeptRide):
            rides.append(ride_page(desk.catalog, kept))
        else:
            unread.append(kept.folder)
    files = desk.catalog.bench_files
    return BenchPages(
        rides=tuple(sorted(rides, key=lambda ride: (ride.date, ride.id), reverse=True)),
        unread=tuple(unread),
        sessions=_sessions(desk),
        weighings=_weighings(desk) if WEIGHINGS in files else None,
        hours=_hours(desk) if HOURS in files else None,
    )


def _sessions(desk: Desk) -> tuple[SessionsShown, ...]:
    if SESSIONS not in desk.catalog.bench_files:
        return ()
    rows = kept_sessions(desk)
    names = naming(desk.catalog)
    found = []
    for product in sorted({row.product for row in rows if row.product in desk.catalog.products}):
        record = product_sessions(product, rows, desk.day)
        if record.rows:
            said = Bullets((record_sentence(record, names), *drift_sentences(record)))
            section = Section(f"sessions-{product}", (sessions_table(record), said))
            name = names.product(product)
            found.append(SessionsShown(product, name, section, _drift(name, record)))
    return tuple(found)


def _drift(name: str, record: ProductSessions) -> tuple[Figured, ...]:
    slope = record.per_1000_km
    if slope is None:
        return ()
    series = [row for row in record.series if row.ridden_km is not None]
    shown = DriftShown(
        tuple(
            SessionShown(row.ridden_km or 0.0, row.mean_difference_pct, row.sd_pct, _session_said(row))
            for row in series
        ),
        slope.value,
    )
    said = (
        f"{len(series)} sessions of one unit of the {name}: the difference from the reference moves by "
        f"{percent_text(slope.value, 2, signed=True)} for each 1,000 km, between "
        f"{percent_text(slope.low, 2, signed=True)} and "
        f"{percent_text(slope.high, 2, signed=True)}."
    )
    caption = (
        "A disc is a session that counts, its bar the spread of its minutes; the broken line runs through "
        "all of them. Kilometres are those that the unit had been ridden before."
    )
    table = Table(
        "Sessions of one unit, by distance",
        (
            Column("Ridden before", "right"),
            Column("Date"),
            Column("Difference", "right"),
            Column("Spread", "right"),
        ),
        tuple(
            (
                f"{number_text(row.ridden_km or 0.0)} km",
                row.date.isoformat(),
                percent_text(row.mean_difference_pct, signed=True),
                percent_text(row.sd_pct),
            )
            for row in series
        ),
    )
    picture = Picture(f"drift-{record.product}", f"Drift of the {name}", said, drift_chart, shown)
    return (Figured(picture, caption, table),)


def _session_said(row: SessionRow) -> str:
    return (
        f"{row.date.isoformat()}, at {number_text(row.ridden_km or 0.0)} km: "
        f"{percent_text(row.mean_difference_pct, signed=True)}"
    )


def _weighings(desk: Desk) -> Section:
    blocks = weigh_blocks(desk.catalog, kept_weighings(desk), desk.day)
    return Section("weighings", _without_notice(desk, blocks))


def _hours(desk: Desk) -> Section:
    return Section("hours", _without_notice(desk, hours_blocks(desk.catalog, kept_hours(desk), desk.day)))


def _without_notice(desk: Desk, blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """Every page says in its head that all is invented."""
    return tuple(block for block in blocks if block not in notice_of_invention(desk.catalog))
