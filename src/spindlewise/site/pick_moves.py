"""What a day's changes did to picks: each buyer's pick as of the day before and as of the day."""

import hashlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import takewhile

from spindlewise.answer.claims import weight_record
from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.private import for_all_eyes
from spindlewise.answer.ranking import rank
from spindlewise.answer.receptions import Receptions
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.price_rows import rows_of_all
from spindlewise.decide.claims_record import ClaimsRecord
from spindlewise.site.touched import Touched


@dataclass(frozen=True, slots=True)
class Move:
    """A buyer's pick before a day and on it, both by id; None where there was nothing to recommend."""

    buyer: str
    before: str | None
    after: str | None


@dataclass(frozen=True, slots=True)
class Leader:
    """A buyer's pick, None where there is nothing to recommend, and its score."""

    product: str | None
    score: float


@dataclass(frozen=True, slots=True)
class Step:
    """One day that touched anything: the picks that moved on it, and every buyer's pick at its end.

    `prices` is a digest of all lines of the price log that are dated on or before the day: a step holds for
    as long as this, and the catalog but for its prices, are the same.
    """

    day: date
    prices: str
    moves: tuple[Move, ...]
    leaders: tuple[tuple[str, Leader], ...]


def pick_steps(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    days: Mapping[date, Touched],
    trail: Sequence[Step] = (),
    receptions: Receptions | None = None,
) -> tuple[Step, ...]:
    """For each day, every buyer whose pick is another than on the day before, by buyer id.

    `days` are all days that touch anything, in order. Curves are anchored, so nobody's score moves with
    another's: only what a day touches is ranked anew, among the scores of the day before.
    `trail` holds the steps that were found for the same catalog, buyers and days when the log had fewer
    prices; those before the first new price still hold. `receptions` may be shared with desks on the catalog.
    """
    if not days:
        return ()
    receptions = receptions or Receptions()
    first = next(iter(days)) - timedelta(1)
    seen = _seen(catalog, (first, *days))
    pairs = takewhile(
        lambda pair: (pair[0].day, pair[0].prices) == (pair[1], seen[pair[1]]), zip(trail, days, strict=False)
    )
    steps = [old for old, _ in pairs]
    if steps:
        desks = _Desks(catalog, steps[-1].day, receptions)
        fields = {name: _Field(leader) for name, leader in steps[-1].leaders}
    else:
        desks = _Desks(catalog, first, receptions)
        fields = {name: _whole(desks, buyer) for name, buyer in sorted(buyers.items())}
    for day, touched in list(days.items())[len(steps) :]:
        desks = _Desks(catalog, day, receptions, None if touched.everything else desks)
        after = {name: _again(desks, buyers[name], touched, was) for name, was in fields.items()}
        moves = tuple(
            Move(name, was.leader.product, after[name].leader.product)
            for name, was in fields.items()
            if was.leader.product != after[name].leader.product
        )
        steps.append(Step(day, seen[day], moves, tuple((name, now.leader) for name, now in after.items())))
        fields = after
    return tuple(steps)


@dataclass(frozen=True, slots=True)
class _Field:
    """A buyer's pick, and the scores of all that could be picked; None where not all were looked at."""

    leader: Leader
    scores: Mapping[str, float] | None = None


def _seen(catalog: Catalog, days: Iterable[date]) -> dict[date, str]:
    """For each of these days, in order, a digest of all lines of the log that are dated by it."""
    rows = sorted(catalog.prices, key=lambda row: (row.date, row.line))
    digest, at, found = hashlib.sha256(), 0, {}
    for day in days:
        while at < len(rows) and rows[at].date <= day:
            digest.update(repr(rows[at]).encode())
            at += 1
        found[day] = digest.hexdigest()
    return found


def _again(desks: "_Desks", buyer: Buyer, touched: Touched, was: _Field) -> _Field:
    if touched.everything:
        return _whole(desks, buyer)
    names = touched.in_region(buyer.region)
    if not names:
        return was
    if was.scores is not None:
        others = {name: score for name, score in was.scores.items() if name not in names}
        return _led({**others, **_scores(desks.of(names), buyer)})
    pick = was.leader.product
    now = _led(_scores(desks.of(names | ({pick} if pick else set())), buyer)).leader
    # the pick itself was touched: whoever was behind it may lead now, unless something is better than it was
    stays = pick not in names or now == was.leader or now.score > was.leader.score
    return _Field(now) if stays else _whole(desks, buyer)


def _whole(desks: "_Desks", buyer: Buyer) -> _Field:
    return _led(_scores(desks.of(desks.catalog.products), buyer))


def _led(scores: Mapping[str, float]) -> _Field:
    """The field with its leader: the highest score, of equal ones the first by id, as in a ranking."""
    first = min(scores, key=lambda name: (-scores[name], name), default=None)
    return _Field(Leader(first, -1.0 if first is None else scores[first]), scores)


def _scores(desk: Desk, buyer: Buyer) -> dict[str, float]:
    """The expected score of every product that no need keeps out and no safety notice holds back."""
    shown, barred = for_all_eyes(desk, buyer)
    try:
        found = rank(desk, shown, barred=barred)
    except NoMarket:
        return {}
    names, scores = found.table.products, found.scores.expected.tolist()
    return {name: score for name, score, held in zip(names, scores, found.held_back, strict=True) if not held}


class _Desks:
    """Desks on one day: on the whole catalog, and on some of its products, made when they are asked for."""

    def __init__(
        self, catalog: Catalog, day: date, receptions: Receptions, before: "_Desks | None" = None
    ) -> None:
        self.catalog, self.day = catalog, day
        self._record: ClaimsRecord = before._record if before else weight_record(catalog, day)
        self._receptions = receptions
        self._made: dict[frozenset[str], Desk] = {}

    def of(self, names: Iterable[str]) -> Desk:
        """A desk on these products, with the record of the whole catalog."""
        wanted = frozenset(names)
        if wanted not in self._made:
            products = {
                name: self.catalog.products[name] for name in sorted(wanted) if name in self.catalog.products
            }
            prices = rows_of_all(self.catalog.prices, wanted)
            part = replace(self.catalog, products=products, prices=prices)
            self._made[wanted] = Desk(part, self.day, self._record, self._receptions)
        return self._made[wanted]
