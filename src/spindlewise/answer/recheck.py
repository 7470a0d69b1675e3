"""Which logged answers no longer hold, why, and what the pick is now."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from spindlewise.answer.answer_log import LoggedAnswer, digest, foundation
from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.ranking import Ranking, rank

Verdict = Literal["holds", "holds, on other figures", "no longer holds", "cannot tell"]


@dataclass(frozen=True, slots=True)
class Change:
    """One thing that an answer rested on and that is not so now."""

    product: str
    what: str
    before: str
    now: str


@dataclass(frozen=True, slots=True)
class Rechecked:
    """One logged answer against the catalog as read now; `ranking` is None where nobody can be served."""

    entry: LoggedAnswer
    verdict: Verdict
    pick_now: str | None
    because: tuple[Change, ...]
    """What changed of the old pick and the new one first, then of all others."""
    ranking: Ranking | None
    note: str = ""


def recheck(desk: Desk, entries: Iterable[LoggedAnswer]) -> list[Rechecked]:
    """Ask every logged question again; an answer holds while its pick and all level with it stay the same."""
    return [_again(desk, entry) for entry in entries]


def _again(desk: Desk, entry: LoggedAnswer) -> Rechecked:
    if entry.pick != entry.pick_without_private:
        note = "it rested on body, rider weight or balance, which were not kept"
        return Rechecked(entry, "cannot tell", None, (), None, note)
    try:
        ranking = rank(desk, entry.buyer, barred=frozenset(entry.barred))
    except NoMarket as none:
        return Rechecked(entry, "cannot tell", None, (), None, str(none))
    pick = ranking.pick.product if ranking.pick else None
    rests_on = foundation(ranking)
    if digest(rests_on) == entry.digest:
        return Rechecked(entry, "holds", pick, (), ranking)
    changes = _changes(entry.rests_on, rests_on, (entry.pick, pick))
    same = pick == entry.pick and _level(ranking) == set(entry.level_with)
    verdict: Verdict = "holds, on other figures" if same else "no longer holds"
    return Rechecked(entry, verdict, pick, changes, ranking)


def _level(ranking: Ranking) -> set[str]:
    return set(ranking.pick.level_with) if ranking.pick else set()


def _changes(
    before: Mapping[str, Any], now: Mapping[str, Any], first: tuple[str | None, str | None]
) -> tuple[Change, ...]:
    names = sorted({*before, *now}, key=lambda name: (name not in first, name))
    return tuple(change for name in names for change in _of(name, before.get(name), now.get(name)))


def _of(name: str, before: Any, now: Any) -> list[Change]:
    if before == now:
        return []
    if before is None or now is None:
        was, is_now = (
            ("not in the catalog", "in the catalog") if before is None else ("in the catalog", "gone")
        )
        return [Change(name, "product", was, is_now)]
    if before.get("out") and now.get("out"):
        return []  # it is out then and now, so nothing of it moved the answer
    found = []
    if before.get("price") != now.get("price"):
        found.append(Change(name, "price", _text(before.get("price")), _text(now.get("price"))))
    if before.get("out") != now.get("out"):
        found.append(Change(name, "needs", _needs(before.get("out")), _needs(now.get("out"))))
    # of what is out the log says nothing about notices: that is no sign of one being lifted
    if not now.get("out") and before.get("held_back", False) != now.get("held_back", False):
        words = {True: "under a safety notice", False: "no safety notice"}
        found.append(
            Change(name, "safety", words[bool(before.get("held_back"))], words[bool(now.get("held_back"))])
        )
    old, new = before.get("figures", {}), now.get("figures", {})
    for criterion in sorted({*old, *new}):
        if old.get(criterion) != new.get(criterion) and criterion in old and criterion in new:
            found.append(Change(name, criterion, _text(old[criterion]), _text(new[criterion])))
    return found


def _text(value: Any) -> str:
    return "none" if value is None else f"{value:g}" if isinstance(value, float) else str(value)


def _needs(out: Any) -> str:
    return "; ".join(map(str, out)) if out else "no need stands against it"
