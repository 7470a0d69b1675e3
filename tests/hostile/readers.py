"""Every reader of what somebody else may have written, as a function of bytes, with samples to begin from."""

import tempfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from bench import fit_bytes
from spindlewise.answer.answer_log import read_answers
from spindlewise.answer.batch import Questions
from spindlewise.bench.csv_columns import CsvColumns
from spindlewise.bench.csv_recording import csv_recording
from spindlewise.bench.fit_recording import fit_recording
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.forgiven import ForgivenFile
from spindlewise.catalog.money import read_rates, read_taxes
from spindlewise.catalog.opening import open_catalog, read_record
from spindlewise.catalog.price_log import read_price_log
from spindlewise.catalog.product import Product
from spindlewise.catalog.run_row import read_runs
from spindlewise.catalog.session_row import read_sessions
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.validating import validate
from spindlewise.catalog.weighing_row import read_weighings
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import Problem
from spindlewise.site.manifest import newer_manifest, read_manifest
from upgrades.kept import KEPT

TESTS = Path(__file__).parents[1]
DEMO = TESTS.parent / "catalog"
BAD = TESTS / "catalog" / "bad"
Answered = tuple[bool, Sequence[Problem]]
"""Whether there is something that was read, and what is wrong."""


@dataclass(frozen=True)
class Reader:
    """`read` takes the bytes of a file; `samples` are files from which others are made."""

    read: Callable[[bytes], Answered]
    samples: tuple[bytes, ...]


def _yaml(model: type[BaseModel], kind: str, prefix: str) -> Reader:
    def read(raw: bytes) -> Answered:
        document, problems = read_yaml_text(raw, "a.yaml")
        if document is None:
            return False, problems
        record, more = validate(model, document)
        return record is not None, [*problems, *more]

    return Reader(read, ((KEPT / f"{kind}-1.yaml").read_bytes(), *_bad(prefix)))


def _begun(name: str) -> bytes:
    """The first thirty lines of a log of the demo."""
    return b"".join((DEMO / name).read_bytes().splitlines(keepends=True)[:30])


def _bad(prefix: str) -> list[bytes]:
    return [path.read_bytes() for path in sorted(BAD.glob(f"{prefix}*")) if path.suffix != ".expected"][:40]


def _from_path(read: Callable[[Path, str], Any], samples: Sequence[bytes]) -> Reader:
    """For readers of a path: the bytes go through a file, in memory where the system has such."""

    def through(raw: bytes) -> Answered:
        path = _scratch() / "a"
        path.write_bytes(raw)
        found, problems = read(path, "a.csv")
        return found is not None, problems

    return Reader(through, tuple(samples))


@cache
def _scratch() -> Path:
    memory = Path("/dev/shm")
    return Path(tempfile.mkdtemp(dir=memory if memory.is_dir() else None))


@cache
def _asking() -> tuple[Catalog, dict[str, Buyer]]:
    catalog, _ = open_catalog(TESTS / "data" / "small_catalog")
    assert catalog is not None
    base, _, _ = read_record(Buyer, catalog.folder / "buyers" / "club-racer.yaml")
    assert base is not None
    return catalog, {"club-racer": base}


def _questions(raw: bytes) -> Answered:
    asked = Questions(raw, "q.csv", *_asking())
    told = [*asked.problems, *(item for item in asked if isinstance(item, Problem))]
    return bool(asked.header), told


def _recording(raw: bytes) -> Answered:
    columns = CsvColumns.model_validate(
        {
            "time": {"column": "s", "written_as": "seconds"},
            "power": "w",
            "cadence": "rpm",
            "balance": {"column": "bal", "written_as": "left percent"},
            "altitude": "alt",
            "lap": "lap",
        }
    )
    found, problems = csv_recording(raw, "a.csv", "meter", columns)
    return found is not None, problems


def _fit(raw: bytes) -> Answered:
    found, problems = fit_recording(raw, "a.fit", "meter")
    return found is not None, problems


def _manifest(raw: bytes) -> Answered:
    """What is no manifest is simply none: a publish then begins anew."""
    newer_manifest(raw)
    read_manifest(raw)
    return True, []


def _fit_samples() -> list[bytes]:
    whole = fit_bytes.ride(
        range(150, 190), cadence=[90] * 40, left_right_balance=[0x80 | 50] * 40, altitude=range(2500, 2540)
    )
    return [whole, *_bad("fit-")]


RIDE = "s,w,rpm,bal,alt,lap\n" + "".join(
    f"{n},{200 + n % 7},90,48.5,{100 + n / 10},{n // 30}\n" for n in range(90)
)
QUESTIONS = "id,buyer,budget,region,receiver,weights\na1,club-racer,700,EU,,\na2,,900,EU,,price=3;weight=1\n"
READERS: dict[str, Callable[[], Reader]] = {
    "product": lambda: _yaml(Product, "product", "product-"),
    "buyer": lambda: _yaml(Buyer, "buyer", "buyer-"),
    "criteria": lambda: _yaml(Criteria, "criteria", "criteria-"),
    "settings": lambda: _yaml(Settings, "catalog", "settings-"),
    "forgiven": lambda: _yaml(ForgivenFile, "forgiven", "yaml-"),
    "ride sheet": lambda: _yaml(RideSheet, "ride", "ride-"),
    "price log": lambda: _from_path(
        read_price_log,
        [b"\n".join((DEMO / "prices.csv").read_bytes().split(b"\n")[:30]) + b"\n", *_bad("prices-")],
    ),
    "rates": lambda: _from_path(read_rates, [(DEMO / "rates.csv").read_bytes(), *_bad("rates-")]),
    "taxes": lambda: _from_path(read_taxes, [(DEMO / "taxes.csv").read_bytes(), *_bad("taxes-")]),
    "weighings": lambda: _from_path(read_weighings, [_begun("bench/weighings.csv"), *_bad("weighings-")]),
    "sessions": lambda: _from_path(read_sessions, [_begun("bench/sessions.csv"), *_bad("sessions-")]),
    "runs": lambda: _from_path(read_runs, [(KEPT / "runs.csv").read_bytes(), *_bad("runs-")]),
    "questions": lambda: Reader(_questions, (QUESTIONS.encode(), *_bad("questions-"))),
    "recording": lambda: Reader(_recording, (RIDE.encode(), *_bad("recording-"))),
    "fit recording": lambda: Reader(_fit, tuple(_fit_samples())),
    "answer log": lambda: _from_path(
        read_answers, [(KEPT / f"logged-answer-{n}.jsonl").read_bytes() for n in (1, 2)]
    ),
    "manifest": lambda: Reader(_manifest, tuple((KEPT / f"manifest-{n}.json").read_bytes() for n in (1, 2))),
}


@cache
def reader(name: str) -> Reader:
    """A reader with its samples, made when it is first asked for."""
    return READERS[name]()
