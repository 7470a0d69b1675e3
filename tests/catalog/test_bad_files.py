"""One file a mistake: the whole printed text of its problems stands beside it in `<case>.expected`.

A case's name begins with the reader it is for; add a reader to READERS when a new kind of file is read.
Write the expected text by hand, or look closely at what `render` gives before it is kept.
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from pydantic import BaseModel

from small_catalog import standing_in
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.money import read_rates, read_taxes
from spindlewise.catalog.opening import read_record
from spindlewise.catalog.price_log import read_price_log
from spindlewise.catalog.product import Product
from spindlewise.catalog.settings import Settings
from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.problems import Problem, render

BAD = Path(__file__).parent / "bad"
FILES = {path.stem: path for path in sorted(BAD.iterdir()) if path.suffix in (".yaml", ".csv")}
CASES = list(FILES)


def _read_only(path: Path) -> list[Problem]:
    return read_yaml(path, path.name)[1]


def _as(model: type[BaseModel]) -> Callable[[Path], list[Problem]]:
    def read(path: Path) -> list[Problem]:
        with standing_in(path.parent):
            return read_record(model, Path(path.name))[2]

    return read


READERS: dict[str, Callable[[Path], list[Problem]]] = {
    "yaml-": _read_only,
    "product-": _as(Product),
    "buyer-": _as(Buyer),
    "criteria-": _as(Criteria),
    "settings-": _as(Settings),
    "prices-": lambda path: read_price_log(path, path.name)[1],
    "rates-": lambda path: read_rates(path, path.name)[1],
    "taxes-": lambda path: read_taxes(path, path.name)[1],
}
"""Beginning of a case's name: the reading whose problems are expected."""


def _reader(case: str) -> Callable[[Path], list[Problem]]:
    return next(reader for prefix, reader in READERS.items() if case.startswith(prefix))


@pytest.mark.parametrize("case", CASES)
def test_bad_file_is_reported_to_the_letter(case: str) -> None:
    problems = _reader(case)(FILES[case])
    assert render(problems, "plain") == (BAD / f"{case}.expected").read_text("utf-8")
    assert problems


def test_every_case_has_a_reader_and_its_expected_text() -> None:
    assert len(CASES) >= 200
    for case in CASES:
        assert _reader(case)
    texts = [path.stem for path in BAD.glob("*.expected") if not path.stem.startswith("catalog-")]
    assert sorted(texts) == sorted(CASES)
