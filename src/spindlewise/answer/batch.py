"""Many questions from a CSV file, as a form gives them: each a buyer, each bad line a problem."""

import codecs
from array import array
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import TYPE_CHECKING, Any

import numpy as np
from pydantic import ValidationError

from spindlewise.answer.asking import Asked, ask
from spindlewise.answer.stated import did_you_mean, order_from, points_from, receiver_from
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.csv_text import LONGEST_LINE, Row, each_row, split_line
from spindlewise.problems import Place, Problem, quoted

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

COLUMNS = (
    "id",
    "name",
    "question",
    "buyer",
    "region",
    "currency",
    "budget",
    "weights",
    "order",
    "sure",
    "receiver",
    "rider_mass_kg",
    "shoes",
    "reading",
    "balance",
    "water",
    "present_pedals",
    "crank_mm",
    "new_crank_mm",
)
"""What a question may state; a file has any of these in any order, and `id` always."""
NEEDS = ("reading", "balance", "water")


@dataclass(frozen=True, slots=True)
class Question:
    """One line of the file as a buyer."""

    line: int
    buyer: Buyer


class Questions:
    """The questions of a file: iterate to get each line's question or the problem that it has."""

    def __init__(
        self, raw: bytes, shown: str, catalog: Catalog, bases: Mapping[str, Buyer] | None = None
    ) -> None:
        """`raw` is the file; `bases` are buyers that a line may start from by id (column `buyer`)."""
        self.catalog = catalog
        self.bases = bases or {}
        self.problems: list[Problem] = []
        self.header: tuple[str, ...] = ()
        self._raw, self._shown = raw, shown
        self._count = 0
        self._twice: frozenset[int] = frozenset()
        self._read(raw, shown)

    def __len__(self) -> int:
        return self._count

    def __iter__(self) -> Iterator[Question | Problem]:
        # rows are made again, one at a time: to keep them takes ten times the memory of the file
        seen: dict[str, int] = {}
        for row in each_row(self._raw, self._shown, self.header, []) if self._count else ():
            yield self._question(row, seen)

    def _read(self, raw: bytes, shown: str) -> None:
        start = Place(shown, 1, 1)
        if not raw:
            tip = "begin it with a line of column names, id among them"
            self.problems.append(Problem(start, "error", "empty-file", "is empty", tip))
            return
        if not raw.endswith(b"\n"):
            raw += b"\n"  # a form's last line often ends without one
            self._raw = raw
        if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
            told, tip = "the file is written in UTF-16", "save it as UTF-8"
            self.problems.append(Problem(start, "error", "not-utf8", told, tip))
            return
        first = raw.split(b"\n", 1)[0].removeprefix(b"\xef\xbb\xbf").decode("utf-8", "replace").rstrip("\r")
        if len(first) > LONGEST_LINE:
            told = f"the line of column names is {len(first)} characters long"
            self.problems.append(Problem(start, "error", "long-line", told, f"at most {LONGEST_LINE}"))
            return
        header = tuple(text for _, text in split_line(first)[0])
        for name in dict.fromkeys(header):
            if name not in COLUMNS:
                tip = did_you_mean(name, COLUMNS)
                message = f"no column is called {quoted(name)}"
                self.problems.append(Problem(start, "error", "unknown-column", message, tip))
        if len(set(header)) != len(header):
            self.problems.append(
                Problem(start, "error", "repeated-column", "a column stands twice", "keep one of them")
            )
        if "id" not in header:
            tip = "give each question an id of its own; it names the file of the answer"
            self.problems.append(Problem(start, "error", "missing-column", "there is no column id", tip))
        if self.problems:
            return
        self.header = header
        # of the ids no more is kept than a number each, which tells nearly all that stand there once
        ids = array("q")
        at = header.index("id")
        for row in each_row(raw, shown, header, self.problems):
            ids.append(hash(row.fields[at].strip()))
        self._count = len(ids)
        numbers, times = np.unique(np.frombuffer(ids, np.int64), return_counts=True)
        self._twice = frozenset(numbers[times > 1].tolist())

    def _question(self, row: Row, seen: dict[str, int]) -> Question | Problem:
        cells = {name: text.strip() for name, text in zip(self.header, row.fields, strict=True)}
        try:
            buyer = self._buyer(cells)
        except ValidationError as error:
            first = error.errors()[0]
            where = str(first["loc"][0]) if first["loc"] else "id"
            return self._problem(row, where, f"{where}: {_said(first)}")
        except ValueError as error:
            where, _, message = str(error).partition("\0")
            return (
                self._problem(row, where, f"{where}: {message}")
                if message
                else self._problem(row, "id", where)
            )
        line = seen.setdefault(buyer.id, row.line) if hash(buyer.id) in self._twice else row.line
        if line != row.line:
            return self._problem(row, "id", f"id: {buyer.id} stands in line {line} already")
        return Question(row.line, buyer)

    def _problem(self, row: Row, column: str, message: str) -> Problem:
        place = row.place(self.header.index(column)) if column in self.header else row.place(0)
        return Problem(place, "error", "question", message, "", column)

    def _buyer(self, cells: Mapping[str, str]) -> Buyer:
        base = self._base(cells)
        asked = Asked(
            budget=_cell(cells, "budget", _amount),
            region=_cell(cells, "region", str.upper),
            currency=_cell(cells, "currency", str.upper),
            receivers=_cell(cells, "receiver", lambda text: tuple(map(receiver_from, text.split(";")))) or (),
            points=_cell(cells, "weights", lambda text: points_from(text.replace(";", ","))),
            order=_cell(cells, "order", lambda text: order_from(text.replace(";", ",").replace(">", ","))),
            rider_mass_kg=_cell(cells, "rider_mass_kg", _number),
            present_pedals=cells.get("present_pedals") or None,
        )
        buyer = ask(self.catalog, asked, base)
        fields: dict[str, Any] = {name: getattr(buyer, name) for name in Buyer.model_fields}
        fields |= {"id": cells["id"]}
        fields |= {name: cells[name] for name in ("name", "question") if cells.get(name)}
        needs = {name: getattr(buyer.needs, name) for name in type(buyer.needs).model_fields}
        needs |= {name: cells[name] for name in NEEDS if cells.get(name)}
        if cells.get("shoes"):
            needs["shoes"] = {"bolts": cells["shoes"]}
        bike = {name: getattr(buyer.bike, name) for name in type(buyer.bike).model_fields}
        for name in ("crank_mm", "new_crank_mm"):
            length = _cell(cells, name, _number)
            if length is not None:
                bike[name] = length
        weights = {name: getattr(buyer.weights, name) for name in type(buyer.weights).model_fields}
        if cells.get("sure"):
            weights["sure"] = cells["sure"]
        return Buyer.model_validate({**fields, "needs": needs, "bike": bike, "weights": weights})

    def _base(self, cells: Mapping[str, str]) -> Buyer | None:
        name = cells.get("buyer")
        if not name:
            return None
        if name not in self.bases:
            raise ValueError(
                f"buyer\0the catalog has no buyer {quoted(name)}; {did_you_mean(name, self.bases)}"
            )
        return self.bases[name]


def _said(error: "ErrorDetails") -> str:
    """What the model found wrong, in a sentence of ours where it has one for the pattern of an id."""
    if error["type"] == "string_pattern_mismatch":
        return f"{quoted(str(error['input']))} is no id; write lower-case letters, digits and hyphens"
    return error["msg"].removeprefix("Value error, ").replace(" | ", "; ")


def _cell(cells: Mapping[str, str], name: str, read: Any) -> Any:
    """A cell through its reader, None where it is empty; what is wrong names the column."""
    text = cells.get(name)
    if not text:
        return None
    try:
        return read(text)
    except ValueError as error:
        raise ValueError(f"{name}\0{error}") from None


def _amount(text: str) -> Decimal:
    try:
        amount = Decimal(text) if text.isascii() and "_" not in text else Decimal("NaN")
    except InvalidOperation:
        amount = Decimal("NaN")
    if not amount.is_finite() or not 0 <= amount <= 1_000_000:
        raise ValueError(f"{quoted(text)} is no amount; write a plain number such as 899.90")
    return amount


def _number(text: str) -> float:
    try:
        return float(_amount(text))
    except ValueError:
        raise ValueError(f"{quoted(text)} is no number; write digits and a point, such as 172.5") from None
