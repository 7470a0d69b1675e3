"""What a product sends over each protocol: since when, from which firmware, and what is only promised."""

from dataclasses import dataclass
from datetime import date

from spindlewise.catalog.as_of import LinkState, links
from spindlewise.catalog.link import Carried
from spindlewise.catalog.product import Product


@dataclass(frozen=True, slots=True)
class Said:
    """One dated statement about a link; `standing` tells whether it is the one that holds on the day."""

    what: str
    how: str
    since: str
    firmware: str
    source: str
    kind: str
    """`holds`, `replaced` or `promised`."""


@dataclass(frozen=True, slots=True)
class LinkRows:
    """One protocol: what it carries on the day, then every statement behind it."""

    state: LinkState
    said: tuple[Said, ...]


def link_rows(product: Product, day: date) -> tuple[LinkRows, ...]:
    """Every protocol of the product; statements that begin after the day are left out, promises are not."""
    if isinstance(product.links, str):
        return ()
    states = links(product, day)
    return tuple(
        LinkRows(state, _said(link.carries, day)) for link, state in zip(product.links, states, strict=True)
    )


def _said(carries: tuple[Carried, ...], day: date) -> tuple[Said, ...]:
    newest: dict[str, Carried] = {}
    for said in carries:
        if not isinstance(said.since, date) or said.since > day:
            continue
        before = newest.get(said.what)
        if before is None or not isinstance(before.since, date) or said.since >= before.since:
            newest[said.what] = said
    return tuple(
        _row(said, newest) for said in carries if not isinstance(said.since, date) or said.since <= day
    )


def _row(said: Carried, newest: dict[str, Carried]) -> Said:
    promised = not isinstance(said.since, date)
    kind = "promised" if promised else "holds" if newest.get(said.what) is said else "replaced"
    since = said.since.isoformat() if isinstance(said.since, date) else "no date"
    return Said(said.what, said.how, since, said.firmware, said.source, kind)
