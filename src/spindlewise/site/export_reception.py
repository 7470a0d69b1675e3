"""Reading modes as a table: what each set of links shows on every kind of receiver, worked out here once."""

from dataclasses import dataclass
from datetime import date
from functools import cache
from itertools import product as each_of

from spindlewise.answer.merits import Yardstick
from spindlewise.answer.received import detail_standing, links_now
from spindlewise.catalog.catalog import Catalog
from spindlewise.reception.reading_mode import Ability, Channels, LinkNow, ReceiverNow, Reception, receive
from spindlewise.render.as_json import Json

HEARD: tuple[tuple[str, ...], ...] = (("ANT+",), ("Bluetooth",), ("ANT+", "Bluetooth"))
FREE: tuple[Channels, ...] = (0, 1, "unlimited", "unknown")
"""Two free channels or more are as good as unlimited ones: no product sends more than two."""
ABLE: tuple[Ability, ...] = ("can", "cannot", "unknown")


@dataclass(frozen=True, slots=True)
class ReceptionTables:
    """Each different outcome once; per set of links a row of places in `outcomes`; per product its row.

    A row runs over `HEARD`, `FREE`, then `ABLE` for pairing two sensors, balance and stroke metrics, the last
    fastest: 3 * 4 * 3 * 3 * 3 = 324 places.
    """

    outcomes: tuple[dict[str, Json], ...]
    rows: tuple[tuple[int, ...], ...]
    row_of: dict[str, int]


def receivers() -> tuple[ReceiverNow, ...]:
    """Every kind of receiver that the rules of reception can tell apart, in the order of a row."""
    return tuple(
        ReceiverNow("", heard, free, pairs, balance, metrics)
        for heard, free, pairs, balance, metrics in each_of(HEARD, FREE, ABLE, ABLE, ABLE)
    )


def reception_tables(catalog: Catalog, yardstick: Yardstick, day: date) -> ReceptionTables:
    """The outcomes of all products of a catalog on a day; promised firmware counts as absent."""
    outcomes: list[dict[str, Json]] = []
    known: dict[str, int] = {}
    rows: dict[tuple[LinkNow, ...], int] = {}
    listed: list[tuple[int, ...]] = []
    row_of: dict[str, int] = {}
    kinds = receivers()

    @cache  # of hundreds of receivers most are alike in what they show
    def place_of(reception: Reception) -> int:
        found = _outcome(reception, yardstick)
        key = repr(found)
        if key not in known:
            known[key] = len(outcomes)
            outcomes.append(found)
        return known[key]

    for name, item in catalog.products.items():
        sent = links_now(item, day)
        if sent not in rows:
            rows[sent] = len(listed)
            listed.append(tuple(place_of(receive(sent, receiver)) for receiver in kinds))
        row_of[name] = rows[sent]
    return ReceptionTables(tuple(outcomes), tuple(listed), row_of)


def _outcome(found: Reception, yardstick: Yardstick) -> dict[str, Json]:
    detail = detail_standing(found)
    return {
        "mode": found.mode,
        "protocol": found.protocol,
        "firmware": found.firmware,
        "balance": found.balance,
        "stroke_metrics": found.stroke_metrics,
        "because": list(found.because),
        "detail": detail.value if isinstance(detail.value, str) else None,
        "detail_merits": list(yardstick.merits(detail)),
    }
