"""How a CSV recording is written: which column is what, in which unit, between which marks."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from spindlewise.bench.stated import Stated, Words

Column = Annotated[str, Field(min_length=1, max_length=120)] | Annotated[int, Field(ge=1, le=1000)]
"""A column by its name in the header, or by its position from 1 where there is no header."""

TimeKind = Literal["seconds", "milliseconds", "elapsed", "time of day", "ISO timestamps", "Unix seconds"]
BalanceKind = Literal["left percent", "right percent", "left share", "right share"]


class TimeColumn(Stated):
    """The column of times, and how they are written."""

    column: Column
    written_as: TimeKind
    """Seconds or milliseconds from any start, elapsed (1:02:03 or 62:03), time of day (17:30:05), dates."""


class BalanceColumn(Stated):
    """The column of the balance, and whose part of the power it gives."""

    column: Column
    written_as: BalanceKind


class CsvColumns(Stated):
    """A described CSV: the marks, the lines to skip, and the columns.

    The power comes from `power`, else as the sum of `left_power` and `right_power`, else from one of them
    doubled, which has to be said with `double_one_side`. The left share comes from `balance`, else from both.
    """

    time: TimeColumn
    power: Column | None = None
    left_power: Column | None = None
    right_power: Column | None = None
    double_one_side: bool = False
    """The file holds one side only, and its doubling is the meter's reading."""
    balance: BalanceColumn | None = None
    cadence: Column | None = None
    altitude: Column | None = None
    """Metres."""
    lap: Column | None = None
    """A number or name that changes where a lap begins."""
    delimiter: Literal[",", ";", "\t", "|", "tab"] = ","
    decimal: Literal[".", ","] = "."
    header: bool = True
    skip_lines: Annotated[int, Field(ge=0, le=1000)] = 0
    """Lines above the header, or above the first row where there is no header."""
    encoding: Literal["utf-8", "cp1252", "utf-16"] = "utf-8"
    missing: tuple[Words | Literal[""], ...] = ("", "-", "nan", "null")
    """What stands where there is no value, in small letters."""

    @model_validator(mode="after")
    def _adds_up(self) -> Self:
        sides = (self.left_power is not None) + (self.right_power is not None)
        if self.power is None and sides == 0:
            raise ValueError("names no column of power | give power, or left_power and right_power")
        if self.power is None and sides == 1 and not self.double_one_side:
            raise ValueError("has one side only | give both sides, or say double_one_side: true")
        if self.double_one_side and (self.power is not None or sides == 2):
            raise ValueError("doubles one side where there is more | leave double_one_side out")
        if self.decimal == "," and self.delimiter == ",":
            raise ValueError(
                "has the comma as decimal mark and as delimiter | name the file's real delimiter"
            )
        if not self.header and any(isinstance(column, str) for column in self.named().values()):
            raise ValueError("names columns but has no header | give each column's position, from 1")
        return self

    def named(self) -> dict[str, Column]:
        """The columns that are described, by what they hold."""
        wanted = {
            "time": self.time.column,
            "power": self.power,
            "left_power": self.left_power,
            "right_power": self.right_power,
            "balance": self.balance.column if self.balance else None,
            "cadence": self.cadence,
            "altitude": self.altitude,
            "lap": self.lap,
        }
        return {what: column for what, column in wanted.items() if column is not None}

    @property
    def mark(self) -> str:
        """The delimiter as one character."""
        return "\t" if self.delimiter == "tab" else self.delimiter
