"""Payloads in every free text, and every form in which commands answer: screen, text, Markdown, CSV, JSON."""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

import small_rides
import worlds
from command_line import run
from hostile.payloads import HIDDEN, PAYLOADS, payload, plain
from hostile.poisoned import written
from hostile.shapes import csv_cells, json_shape, markdown_shape
from hostile.test_poisoned_site import sheet_as_plain
from spindlewise.bench.ride_sheet import RideSheet
from spindlewise.render.as_csv import as_csv
from spindlewise.render.as_markdown import as_markdown
from spindlewise.render.as_print import as_print
from spindlewise.render.as_terminal import as_terminal
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.json_ride import ride_json
from spindlewise.render.words_ride import ride_blocks

STYLING = re.compile(r"\x1b\[[0-9;]*m")
"""What we ourselves send to a terminal: colour and weight (ECMA-48, SGR), and nothing else."""
PAIR = ("pedal-0", "pedal-1")
COMMANDS = [
    (*words, *form)
    for words, forms in {
        ("rank", "--buyer", "buyer-0"): ("terminal", "text", "markdown", "csv", "json"),
        ("answer", "--buyer", "buyer-0"): ("terminal", "text", "markdown", "json"),
        ("answer", "--buyer", "buyer-1"): ("text", "markdown"),
        ("versus", *PAIR, "--buyer", "buyer-0"): (),
        ("ladder", "--buyer", "buyer-0"): (),
        ("swap", *PAIR, "--buyer", "buyer-0"): (),
        ("price", "history", PAIR[0]): (),
        ("price", "at", PAIR[0], "120", "--buyer", "buyer-0"): (),
        ("check",): ("plain", "human", "json", "github"),
    }.items()
    for form in ([("--format", name) for name in forms] or [(), ("--json",)])
]


def told(folder: Path, text: Callable[[int], str]) -> dict[tuple[str, ...], str]:
    catalog = written(folder / "catalog", text, 2)
    found = {}
    for words in COMMANDS:
        result = run(*words, catalog=catalog, columns=120)
        assert result.exit_code in (0, 4), result.output
        assert result.stderr.replace("\n", "").isprintable()
        found[words] = result.stdout.replace(str(folder), "…")
    return found


@pytest.mark.slow
@pytest.mark.parametrize("turns", [range(n, len(PAYLOADS), 26) for n in (0, 8, 16)], ids=str)
def test_no_text_gets_out_of_an_answer(tmp_path: Path, turns: range) -> None:
    """Twelve turns, so that each text holds payloads of every kind; all of them are tried below."""
    for turn in turns:
        found = told(tmp_path / f"poisoned-{turn}", lambda n, turn=turn: payload(n + turn))
        usual = told(tmp_path / f"plain-{turn}", lambda n, turn=turn: plain(n + turn))
        for words, text in found.items():
            assert text.replace("\n", "").replace("\r", "").isprintable(), words
            if "json" in words or "--json" in words:
                assert json_shape(json.loads(text)) == json_shape(json.loads(usual[words])), words
            elif "csv" in words:
                sheet_as_plain("rank", csv_cells(text.encode()), csv_cells(usual[words].encode()))
            elif "markdown" in words:
                assert markdown_shape(text) == markdown_shape(usual[words]), words


def blocks(text: str) -> list[Block]:
    columns = (Column(text), Column("Price", "right"))
    return [
        Heading(text, 1),
        Heading(text, 2),
        Paragraph(text),
        Paragraph(text, "caution"),
        Paragraph(text, "important"),
        Bullets((text, f"first {text}")),
        Table(text, columns, ((text, "1.00"), (f"x {text}", text))),
        Table(text, columns, ((text, text * 9), (text * 9, text))),
    ]


@pytest.mark.parametrize("text", [*PAYLOADS, *HIDDEN])
def test_no_text_gets_out_of_any_block(text: str) -> None:
    """Hidden characters are refused where they are read; should one come here, it is written as an escape."""
    made, usual = blocks(text), blocks("Plain")
    for width in (20, 80):
        coloured = as_terminal(made, width, colour=True)
        assert "\x1b" in coloured
        assert STYLING.sub("", coloured).replace("\n", "").isprintable()
        assert as_terminal(made, width, colour=False).replace("\n", "").isprintable()
    assert as_text(made).replace("\n", "").isprintable()
    assert as_markdown(made).replace("\n", "").isprintable()
    assert markdown_shape(as_markdown(made)) == markdown_shape(as_markdown(usual))
    page, plain_page = as_print(made, text), as_print(usual, "Plain")
    assert page.count("<") == plain_page.count("<")
    assert page.replace("\n", "").isprintable()
    sheet = as_csv([text, "b"], [[text, "-86"], ["2.5", f"x{text}"]])
    (head, first, second) = csv_cells(sheet.encode())
    assert not any(
        cell.startswith(("=", "+", "-", "@", "\t", "\r")) for cell in (head[0], first[0], second[1])
    )
    assert (first[1], second[0]) == ("-86", "2.5")


def sheet_with(sheet: RideSheet, text: str) -> RideSheet:
    """The sheet with the text wherever its schema takes words."""
    data = sheet.model_dump(by_alias=True)
    data |= {"title": text, "rider": text, "note": text}
    for meter in data["meters"]:
        meter |= {"unit": text, "firmware": text, "battery": text, "recorder": text}
    for segment in data["segments"]:
        segment |= {"name": text, "because": text}
    return RideSheet.model_validate(data)


@pytest.mark.parametrize("text", PAYLOADS)
def test_no_text_of_a_ride_gets_out_of_its_report(text: str) -> None:
    report, catalog = small_rides.demo(), worlds.catalog([], [])
    poisoned, usual = (replace(report, sheet=sheet_with(report.sheet, words)) for words in (text, "Plain"))
    made, expected = (ride_blocks(catalog, each, (), ()) for each in (poisoned, usual))
    assert markdown_shape(as_markdown(made)) == markdown_shape(as_markdown(expected))
    assert as_text(made).replace("\n", "").isprintable()
    assert json_shape(ride_json(poisoned, (), ())) == json_shape(ride_json(usual, (), ()))
