"""One file a mistake: the whole printed text of its problems stands beside it in `<case>.expected`.

A case's name begins with the reader it is for; add a reader to READERS when a new kind of file is read.
Write the expected text by hand, or look closely at what `render` gives before it is kept.
"""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pydantic import BaseModel

from small_catalog import GOOD, standing_in
from spindlewise.answer.batch import Questions
from spindlewise.bench.csv_columns import CsvColumns
from spindlewise.bench.csv_recording import read_csv_recording
from spindlewise.bench.fit_recording import read_fit_recording
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.money import read_rates, read_taxes
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.price_log import read_price_log
from spindlewise.catalog.product import Product
from spindlewise.catalog.reading import read_record
from spindlewise.catalog.run_row import read_runs
from spindlewise.catalog.session_row import read_sessions
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.weighing_row import read_weighings
from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.problems import Problem, render

BAD = Path(__file__).parent / "bad"
FILES = {path.stem: path for path in sorted(BAD.iterdir()) if path.suffix in (".yaml", ".csv", ".fit")}
CASES = list(FILES)


def _read_only(path: Path) -> list[Problem]:
    return read_yaml(path, path.name)[1]


def _as(model: type[BaseModel]) -> Callable[[Path], list[Problem]]:
    def read(path: Path) -> list[Problem]:
        with standing_in(path.parent):
            return read_record(model, Path(path.name))[2]

    return read


def _described(time: str = "seconds", **more: Any) -> Callable[[Path], list[Problem]]:
    """A recording whose column of times is called s, and of power w unless the sides are described."""
    power = {} if "left_power" in more else {"power": "w"}
    columns = CsvColumns.model_validate({"time": {"column": "s", "written_as": time}, **power, **more})
    return lambda path: read_csv_recording(path, path.name, "meter", columns)[1]


FULL = {
    "cadence": "rpm",
    "balance": {"column": "bal", "written_as": "left percent"},
    "altitude": "alt",
    "lap": "lap",
}


@cache
def _good() -> tuple[Catalog, Buyer]:
    catalog, _ = open_catalog(GOOD)
    base, _, _ = read_record(Buyer, GOOD / "buyers" / "shore-rider.yaml")
    assert catalog is not None
    assert base is not None
    return catalog, base


def _questions(path: Path) -> list[Problem]:
    """Of the good catalog, in which there is one buyer to begin with: club-racer."""
    catalog, base = _good()
    asked = Questions(path.read_bytes(), path.name, catalog, {"club-racer": base})
    return asked.problems + [item for item in asked if isinstance(item, Problem)]


READERS: dict[str, Callable[[Path], list[Problem]]] = {
    "yaml-": _read_only,
    "product-": _as(Product),
    "buyer-": _as(Buyer),
    "criteria-": _as(Criteria),
    "settings-": _as(Settings),
    "prices-": lambda path: read_price_log(path, path.name)[1],
    "rates-": lambda path: read_rates(path, path.name)[1],
    "taxes-": lambda path: read_taxes(path, path.name)[1],
    "weighings-": lambda path: read_weighings(path, path.name)[1],
    "sessions-": lambda path: read_sessions(path, path.name)[1],
    "runs-": lambda path: read_runs(path, path.name)[1],
    "questions-": _questions,
    "ride-": _as(RideSheet),
    "recording-clock-": _described("time of day"),
    "recording-iso-": _described("ISO timestamps"),
    "recording-unix-": _described("Unix seconds"),
    "recording-sides-": _described(left_power="l", right_power="r"),
    "recording-full-": _described(**FULL),
    "recording-": _described(),
    "fit-": lambda path: read_fit_recording(path, path.name, "meter")[1],
}
"""Beginning of a case's name: the reading whose problems are expected; the first that fits is taken."""


def _reader(case: str) -> Callable[[Path], list[Problem]]:
    return next(reader for prefix, reader in READERS.items() if case.startswith(prefix))


@pytest.mark.parametrize("case", CASES)
def test_bad_file_is_reported_to_the_letter(case: str) -> None:
    problems = _reader(case)(FILES[case])
    assert render(problems, "plain") == (BAD / f"{case}.expected").read_text("utf-8")
    assert problems


def test_every_case_has_a_reader_and_its_expected_text() -> None:
    assert len(CASES) >= 300
    for case in CASES:
        assert _reader(case)
    texts = [path.stem for path in BAD.glob("*.expected") if not path.stem.startswith("catalog-")]
    assert sorted(texts) == sorted(CASES)
