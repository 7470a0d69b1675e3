"""Every payload in every free text of a catalog, and everything that `publish` makes of it.

The shape of each page and file is that of the same catalog with plain words: not one element, attribute, key,
cell or line more, and every number where it was. tests/browser opens the pages.
"""

import json
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from hostile.payloads import PAYLOADS, payload, plain
from hostile.poisoned import DAY, MODELS, opened, text_fields, written
from hostile.shapes import (
    charts,
    csv_cells,
    html_shape,
    html_tree,
    json_in_any_order,
    json_shape,
    markdown_shape,
    scripts,
    xml_shape,
)
from spindlewise.site import pages, picture

PRODUCTS = 2
Made = Mapping[str, bytes]
NO_CHART = '<svg class="chart"></svg>'
DRAWN = {"svg", "g", "path", "text", "tspan", "rect", "line", "circle", "title", "desc", "clipPath", "defs"}


def made(folder: Path, text: Callable[[int], str]) -> dict[str, bytes]:
    catalog, buyers = opened(written(folder, text, PRODUCTS))
    return pages.gather(catalog, buyers, DAY)


@pytest.fixture
def undrawn(monkeypatch: pytest.MonkeyPatch) -> None:
    """Charts take most of the time of a publish; they are looked at in a test of their own."""
    monkeypatch.setattr(pages, "draw_all", lambda all_, *_: dict.fromkeys((p.key for p in all_), NO_CHART))


def test_there_are_enough_payloads_and_every_kind_of_text() -> None:
    assert len(set(PAYLOADS)) == len(PAYLOADS) >= 60
    assert all(text.isprintable() and text == text.strip() and len(text) <= 600 for text in PAYLOADS)
    assert {kind: len(text_fields(kind)) for kind in MODELS} == {
        "product-1": 39, "buyer-1": 5, "catalog-1": 11, "criteria-1": 25
    }  # fmt: skip


@pytest.mark.slow
@pytest.mark.parametrize("turns", [range(n, len(PAYLOADS), 7) for n in range(7)], ids=str)
def test_no_text_changes_the_shape_of_anything(tmp_path: Path, undrawn: None, turns: range) -> None:
    """In turn r the n-th text holds payload n + r: after all turns every text has held every payload."""
    for turn in turns:
        found = made(tmp_path / f"poisoned-{turn}", lambda n, turn=turn: payload(n + turn))
        usual = made(tmp_path / f"plain-{turn}", lambda n, turn=turn: plain(n + turn))
        assert set(found) == set(usual)
        for path, data in found.items():
            as_plain(path, data, usual[path])


def as_plain(path: str, data: bytes, usual: bytes) -> None:
    ending = path.rpartition(".")[2]
    if ending == "html":
        tree, other = html_tree(data), html_tree(usual)
        assert html_shape(tree) == html_shape(other), path
        (programs, found), (usual_programs, expected) = scripts(tree), scripts(other)
        assert programs == usual_programs, path
        assert len(found) == len(expected), path
        shape = json_in_any_order if path == "weigh.html" else json_shape
        for block, expected_block in zip(found, expected, strict=True):
            assert shape(block) == shape(expected_block), path
    elif ending == "xml":
        assert xml_shape(data) == xml_shape(usual), path
    elif ending == "json":
        assert json_shape(json.loads(data)) == json_shape(json.loads(usual)), path
    elif ending == "md":
        assert markdown_shape(data.decode()) == markdown_shape(usual.decode()), path
    elif ending == "csv":
        sheet_as_plain(path, csv_cells(data), csv_cells(usual))
    else:
        assert ending == "txt", path
        assert data.decode().replace("\n", "").isprintable()
        assert len(data) <= 5000


def sheet_as_plain(path: str, cells: list[list[str]], usual: list[list[str]]) -> None:
    assert [len(row) for row in cells] == [len(row) for row in usual], path
    for row, expected in zip(cells, usual, strict=True):
        for cell, other in zip(row, expected, strict=True):
            assert not cell.startswith(("=", "@", "\t", "\r")), (path, cell)
            if number(other):
                assert cell == other, path  # numbers stay numbers
            else:
                assert not cell.startswith(("+", "-")) or cell == other, (path, cell)


def number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return True


@pytest.mark.slow
def test_no_text_gets_out_of_a_chart(tmp_path: Path) -> None:
    drawn = 0
    for turn in range(0, len(PAYLOADS), 12):
        found = made(tmp_path / str(turn), lambda n, turn=turn: payload(n + turn))
        for path, data in found.items():
            if path.endswith(".html"):
                for chart in charts(html_tree(data)):
                    drawn += 1
                    chart_is_plain(chart)
    assert drawn >= 100
    picture.drawn.cache_clear()


def chart_is_plain(chart: object) -> None:
    for element in chart.iter():  # type: ignore[attr-defined]
        assert element.tag.rpartition("}")[2] in DRAWN, element.tag
        for name, value in element.attrib.items():
            assert not str(name).lower().startswith("on")
            assert "href" not in str(name)
            assert "url(http" not in value
