"""What changed in a catalog between two days: prices, figures, firmware, notices, reports, the range."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.figure import basis_words
from spindlewise.catalog.observation import ATTRIBUTE_UNITS, Observation
from spindlewise.catalog.price_log import offered
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.product import Product
from spindlewise.site.observation_rows import TITLES, value_words
from spindlewise.units import money_text, percent_text

Kind = Literal[
    "safety notice",
    "notice lifted",
    "price fall",
    "correction",
    "firmware",
    "new figure",
    "trouble reported",
    "in the range",
    "price rise",
    "price ran out",
    "first price",
    "seen again",
    "rate",
]
KINDS: tuple[Kind, ...] = (
    "safety notice",
    "notice lifted",
    "price fall",
    "correction",
    "firmware",
    "new figure",
    "trouble reported",
    "in the range",
    "price rise",
    "price ran out",
    "first price",
    "seen again",
    "rate",
)
"""In the order in which a reader wants them."""


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that changed on a day, in a sentence without its subject; a rate has no product."""

    day: date
    kind: Kind
    product: str
    said: str


def events(catalog: Catalog, since: date, day: date) -> tuple[Event, ...]:
    """All that changed after `since` and by the day, the newest day first; nothing dated later is seen."""
    found = [*_prices(catalog, day), *_rates(catalog)]
    for product in catalog.products.values():
        found += [*_figures(product, day), *_firmware(product), *_notices(product), *_reports(product)]
        found += [
            Event(s.since, "in the range", product.id, f"{s.state}, {s.source}") for s in product.statuses[1:]
        ]
    kept = (event for event in found if since < event.day <= day)
    return tuple(sorted(kept, key=lambda e: (-e.day.toordinal(), KINDS.index(e.kind), e.product, e.said)))


def _prices(catalog: Catalog, day: date) -> Iterator[Event]:
    last: dict[tuple[str, ...], PriceRow] = {}
    for row in sorted(catalog.prices, key=lambda r: (r.date, r.line)):
        if row.date > day or row.product not in catalog.products:
            continue
        before = last.get(offered(row))
        last[offered(row)] = row
        where = f"{row.kind}, {row.seller}, {_region(catalog, row.region)}"
        now = money_text(row.amount, row.currency)
        if before is None:
            yield Event(row.date, "first price", row.product, f"{now}, {where}")
            continue
        ended = tuple(_ran_out(catalog, before, row.date))
        yield from ended
        if before.amount != row.amount:
            yield _moved(row, before, f"{now}, {where}")
        elif ended:
            yield Event(row.date, "seen again", row.product, f"{now}, {where}")
    for row in last.values():
        yield from _ran_out(catalog, row, day + timedelta(1))


def _ran_out(catalog: Catalog, row: PriceRow, anew: date) -> Iterator[Event]:
    """The end of a price, unless the offer was seen anew before it or on its morrow."""
    if row.valid_until and row.valid_until + timedelta(1) < anew:
        ended = f"{money_text(row.amount, row.currency)} no longer holds, {row.kind}, {row.seller}"
        said = f"{ended}, {_region(catalog, row.region)}"
        yield Event(row.valid_until + timedelta(1), "price ran out", row.product, said)


def _region(catalog: Catalog, code: str) -> str:
    facts = catalog.settings.regions.get(code)
    return facts.name if facts else code


def _moved(row: PriceRow, before: PriceRow, said: str) -> Event:
    by = row.amount - before.amount
    share = percent_text(float(abs(by) / before.amount * 100)) if before.amount else "from nothing"
    kind: Kind = "price fall" if by < 0 else "price rise"
    more = "less" if by < 0 else "more"
    against = f"{money_text(abs(by), row.currency)} {more} ({share}) than seen on {before.date}"
    return Event(row.date, kind, row.product, f"{said}: {against}")


def _rates(catalog: Catalog) -> Iterator[Event]:
    for rate in catalog.rates.rows:
        yield Event(rate.date, "rate", "", f"one {rate.base} is {rate.rate} {rate.quote}")
    for tax in catalog.taxes.rows:
        said = f"{tax.rate_pct} % tax on goods in {_region(catalog, tax.region)}"
        yield Event(tax.date, "rate", "", said)


def _figures(product: Product, day: date) -> Iterator[Event]:
    for key, title in TITLES.items():
        series: Sequence[Observation] | str = getattr(product.observations, key)
        if isinstance(series, str):
            continue
        last: dict[tuple[str, str], Observation] = {}
        for observation in sorted(series, key=lambda o: o.date):
            if observation.date > day:
                continue
            alike = observation.grade, basis_words(observation)
            before = last.get(alike)
            last[alike] = observation
            now = _value(observation, key)
            said = f"{title}, {', '.join(part for part in alike if part)}: {now}"
            if before is None:
                yield Event(observation.date, "new figure", product.id, f"{said} ({observation.source})")
            elif _value(before, key) != now:
                was = f"{said}, before {_value(before, key)} of {before.date} ({observation.source})"
                yield Event(observation.date, "correction", product.id, was)


def _value(observation: Observation, key: str) -> str:
    value, spread = value_words(observation, ATTRIBUTE_UNITS[key])
    return value if spread in ("", "not stated") else f"{value} {spread}"


def _firmware(product: Product) -> Iterator[Event]:
    for link in () if isinstance(product.links, str) else product.links:
        for said in link.carries:
            if isinstance(said.since, date) and said.firmware not in ("not applicable", "unknown"):
                what = f"{said.what} over {link.protocol}: {said.how}, with firmware {said.firmware}"
                yield Event(said.since, "firmware", product.id, f"{what} ({said.source})")


def _notices(product: Product) -> Iterator[Event]:
    for notice in () if isinstance(product.safety_notices, str) else product.safety_notices:
        yield Event(notice.date, "safety notice", product.id, f"{notice.what} {notice.action}")
        if isinstance(notice.ended, date):
            yield Event(notice.ended, "notice lifted", product.id, notice.what)


def _reports(product: Product) -> Iterator[Event]:
    for report in () if isinstance(product.reliability, str) else product.reliability:
        of = "an unknown number of" if isinstance(report.of_units, str) else f"{report.of_units:,}"
        said = (
            f"{report.what} {report.count} of {of} units, {report.grade}, {report.status} ({report.source})"
        )
        yield Event(report.date, "trouble reported", product.id, said)
