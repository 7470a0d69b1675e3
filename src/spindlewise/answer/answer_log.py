"""The answer log: what was asked, on which day, what was said, and a digest of all that it rested on."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from spindlewise.answer.desk import Desk
from spindlewise.answer.paid import Paid
from spindlewise.answer.private import without_private
from spindlewise.answer.ranking import Ranking, rank
from spindlewise.answer.sealed_line import sealed, unsealed
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.csv_text import MOST_TOLD, too_many
from spindlewise.catalog.durable import append_line
from spindlewise.catalog.schema_version import newer_than
from spindlewise.problems import Place, Problem
from spindlewise.units import amount_text

SCHEMA = "spindlewise logged answer 2"
UNSEALED = "spindlewise logged answer 1"
"""Entries of the first version: only what they rest on has a digest, the line as a whole has no seal."""
LONGEST_ENTRY = 1_000_000
"""A longer line is not an entry of this log."""


@dataclass(frozen=True, slots=True)
class LoggedAnswer:
    """One answer as it was given. `barred` products fail a need that was not kept, such as rider weight."""

    day: date
    buyer: Buyer
    private_kept: bool
    barred: tuple[str, ...]
    pick: str | None
    level_with: tuple[str, ...]
    pick_without_private: str | None
    """What the question comes to without the data that was not kept: what a recheck compares with."""
    rests_on: Mapping[str, Any]
    digest: str
    line: int = 0


def to_log(desk: Desk, ranking: Ranking, keep_private: bool = False) -> LoggedAnswer:
    """The entry for an answer. Body, rider weight and balance are left out unless `keep_private`."""
    buyer = ranking.buyer if keep_private else without_private(ranking.buyer)
    barred: tuple[str, ...] = ()
    again = ranking
    if buyer != ranking.buyer:
        barred = tuple(
            out.product for out in ranking.excluded if any(f.need == "rider weight" for f in out.because)
        )
        again = rank(desk, buyer, barred=frozenset(barred))
    rests_on = foundation(again)
    pick = ranking.pick
    return LoggedAnswer(
        day=desk.day,
        buyer=buyer,
        private_kept=keep_private,
        barred=barred,
        pick=pick.product if pick else None,
        level_with=again.pick.level_with if again.pick else (),
        pick_without_private=again.pick.product if again.pick else None,
        rests_on=rests_on,
        digest=digest(rests_on),
    )


def foundation(ranking: Ranking) -> dict[str, Any]:
    """All that an answer rests on: each product's price, figures and score, or why it is out."""
    found: dict[str, Any] = {}
    for placed in ranking.placed:
        figures = {
            name: standing.value if standing.is_known else standing.origin
            for name, standing in placed.standings.items()
            if name in placed.merits and name != "price"
        }
        found[placed.product] = {
            "price": amount_text(placed.paid.amount, placed.paid.currency),
            "score": round(placed.score.expected, 6),
            "rank": placed.rank,
            "figures": {k: round(v, 6) if isinstance(v, float) else v for k, v in figures.items()},
            "held_back": placed.held_back,
        }
    for out in ranking.excluded:
        price = amount_text(out.paid.amount, out.paid.currency) if isinstance(out.paid, Paid) else None
        found[out.product] = {"price": price, "out": [failure.because for failure in out.because]}
    return dict(sorted(found.items()))


def digest(rests_on: Mapping[str, Any]) -> str:
    """SHA-256 over the canonical JSON of what an answer rests on."""
    text = json.dumps(rests_on, sort_keys=True, ensure_ascii=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def append_answer(path: Path, entry: LoggedAnswer) -> None:
    """Append the entry as one sealed line of JSON; raises CannotWrite."""
    buyer = entry.buyer.model_dump(mode="json", by_alias=True, exclude_defaults=True)
    if entry.buyer.budget_amount is not None:
        # a number, as an author writes it: the reader takes it as the decimal that stands there
        buyer["budget"] = float(entry.buyer.budget_amount)
    record = {
        "schema": SCHEMA,
        "as_of": entry.day.isoformat(),
        "private_kept": entry.private_kept,
        "barred": list(entry.barred),
        "pick": entry.pick,
        "level_with": list(entry.level_with),
        "pick_without_private": entry.pick_without_private,
        "buyer": buyer,
        "rests_on": dict(entry.rests_on),
        "digest": entry.digest,
    }
    append_line(path, sealed(record) + b"\n", mended_by="spindlewise recheck --repair")


def read_answers(path: Path, shown: str) -> tuple[list[LoggedAnswer], list[Problem]]:
    """All entries that can be read, and a problem for every line that cannot."""
    try:
        raw = path.read_bytes()
    except OSError as error:
        reason = error.strerror or "cannot be read"
        return [], [Problem(Place(shown, 1, 1), "error", "unreadable-file", f"the answer log: {reason}")]
    lines = raw.split(b"\n")
    problems: list[Problem] = []
    if lines[-1]:
        tip = "`spindlewise recheck --repair` takes it out and keeps a copy"
        problems.append(
            Problem(Place(shown, len(lines), 1), "error", "torn-line", "the last line has no end", tip)
        )
    entries = []
    for number, line in enumerate(lines[:-1], start=1):
        entry, why = _entry(line, number)
        if entry is not None:
            entries.append(entry)
        else:
            tip = "take the line out; every entry is one line of JSON as `answer --log` writes it"
            problems.append(Problem(Place(shown, number, 1), "error", "logged-answer", why, tip))
        if len(problems) > MOST_TOLD:
            return entries, [*problems, too_many(shown, number)]
    return entries, problems


def _entry(line: bytes, number: int) -> tuple[LoggedAnswer | None, str]:
    if len(line) > LONGEST_ENTRY:
        return None, f"is {len(line)} bytes long, {LONGEST_ENTRY} at most"
    try:
        record = json.loads(line)
    except (ValueError, RecursionError):
        return None, "is not JSON"
    if not isinstance(record, dict) or not isinstance(record.get("schema"), str):
        return None, "is not an entry of an answer log"
    newer = newer_than(record["schema"], SCHEMA)
    if newer is not None:
        return None, "; ".join(newer)
    if record["schema"] not in (SCHEMA, UNSEALED):
        return None, f"has another schema than {SCHEMA!r}"
    if record["schema"] == SCHEMA and unsealed(line) is None:
        return None, "was changed after it was written: its seal does not fit"
    try:
        buyer = Buyer.model_validate_json(json.dumps(record["buyer"]))
        entry = LoggedAnswer(
            day=date.fromisoformat(record["as_of"]),
            buyer=buyer,
            private_kept=record["private_kept"] is True,
            barred=tuple(map(str, record["barred"])),
            pick=record["pick"],
            level_with=tuple(map(str, record["level_with"])),
            pick_without_private=record["pick_without_private"],
            rests_on=dict(record["rests_on"]),
            digest=str(record["digest"]),
            line=number,
        )
    except ValidationError as error:
        return None, f"its question cannot be read: {error.errors()[0]['msg']}"
    except (KeyError, TypeError, ValueError):
        return None, "lacks a part of an entry, or has one of another kind"
    if digest(entry.rests_on) != entry.digest:
        return None, "was changed after it was written: its digest does not fit"
    return entry, ""
