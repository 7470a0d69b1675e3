"""`spindlewise answer --batch`: a form's CSV of questions, answered one by one, bad lines told apart."""

import csv
import io
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import typer

from spindlewise.cli.endings import CANNOT_READ_OR_WRITE, DATA, DONE
from spindlewise.cli.printing import answer as print_answer
from spindlewise.cli.printing import remark

if TYPE_CHECKING:
    from spindlewise.answer.batch import Question
    from spindlewise.answer.desk import Desk
    from spindlewise.problems import Problem

TABLE = (
    "id",
    "pick",
    "level_with",
    "price",
    "currency",
    "score",
    "next",
    "nearly",
    "because",
    "as_of",
    "costs",
)
ENDINGS = {"text": "txt", "markdown": "md", "json": "json", "terminal": "txt"}


def answer_batch(desk: "Desk", questions: Path, folder: Path | None, form: str | None) -> NoReturn:
    """Answer every question that can be read; a table to stdout, or one file for each in `folder`.

    Ends the command: 0, or 3 where a line was bad; the others are answered all the same.
    """
    from spindlewise.answer.asking import open_buyers
    from spindlewise.answer.batch import Question, Questions
    from spindlewise.catalog.csv_text import read_raw
    from spindlewise.problems import render

    tip = "name a CSV file that begins with a line of column names, id among them"
    raw, unread = read_raw(questions, questions.as_posix(), tip)
    if raw is None:
        remark(render(unread, "plain").rstrip("\n"))
        raise typer.Exit(CANNOT_READ_OR_WRITE)
    bases, _ = open_buyers(desk.catalog.folder / "buyers", desk.catalog)
    asked = Questions(raw, questions.as_posix(), desk.catalog, bases)
    bad: list[Problem] = list(asked.problems)
    if folder is not None:
        _make(folder)
    else:
        print_answer(_line(TABLE))
    done = 0
    for item in _progress(asked, len(asked)):
        if not isinstance(item, Question):
            bad.append(item)
            continue
        problem = _one(desk, item, questions, folder, form)
        if problem is None:
            done += 1
        else:
            bad.append(problem)
    if bad:
        remark(render(bad, "plain").rstrip("\n"))
    where = f" into {folder}" if folder is not None else ""
    remark(f"{done} of {len(asked)} questions answered{where}.")
    raise typer.Exit(DATA if bad else DONE)


def _make(folder: Path) -> None:
    from spindlewise.catalog.durable import CannotWrite, reason

    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder}: {reason(error)}") from error


def _one(
    desk: "Desk", item: "Question", questions: Path, folder: Path | None, form: str | None
) -> "Problem | None":
    """Answer one question; a region that cannot be served is a problem of its line."""
    from spindlewise.answer.market import NoMarket
    from spindlewise.catalog.durable import replace_file
    from spindlewise.problems import Place, Problem

    try:
        if folder is None:
            print_answer(_line(_row(desk, item)))
        else:
            text, ending = _text(desk, item, form)
            replace_file(folder / f"{item.buyer.id}.{ending}", text.encode())
    except (NoMarket, ValueError) as error:
        place = Place(questions.as_posix(), item.line, 1)
        return Problem(place, "error", "question", f"{item.buyer.id}: {error}")
    return None


def _text(desk: "Desk", item: "Question", form: str | None) -> tuple[str, str]:
    if form is None:
        from spindlewise.answer.brief import brief
        from spindlewise.render.naming import naming
        from spindlewise.render.words_brief import brief_text

        names = desk.kept("names", lambda: naming(desk.catalog))
        return brief_text(desk.catalog, brief(desk, item.buyer), names), "txt"
    from spindlewise.answer.reply import reply_to
    from spindlewise.cli.answer import said

    style = "text" if form == "terminal" else form
    return said(desk.catalog, reply_to(desk, item.buyer), style), ENDINGS[form]


def _row(desk: "Desk", item: "Question") -> tuple[str, ...]:
    from spindlewise.answer.brief import brief
    from spindlewise.units import amount_text, money_text, points_text

    found = brief(desk, item.buyer)
    pick, missed = found.pick, found.near_miss
    because = (
        ""
        if pick
        else "held back by a safety notice"
        if len(found.ranking.order)
        else "nothing meets the needs"
    )
    return (
        item.buyer.id,
        pick.product if pick else "",
        ";".join(pick.level_with) if pick else "",
        amount_text(pick.paid.amount, pick.paid.currency) if pick else "",
        item.buyer.currency,
        points_text(pick.score.expected) if pick else "",
        found.next.product if found.next else "",
        missed.product if missed else "",
        because,
        desk.day.isoformat(),
        money_text(pick.paid.amount, pick.paid.currency) if pick else "",
    )


def _line(cells: Iterable[str]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\r\n").writerow(cells)
    return text.getvalue()


def _progress(items: "Iterable[Question | Problem]", total: int) -> "Iterator[Question | Problem]":
    if not sys.stderr.isatty() or total < 20:
        yield from items
        return
    from rich.console import Console
    from rich.progress import track

    yield from track(items, "Answering", total, console=Console(stderr=True), transient=True)
