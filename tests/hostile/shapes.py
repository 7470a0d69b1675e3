"""What a page or file is made of, its texts aside: two of them with other words have the same shape."""

import csv
import io
import json
from collections import Counter
from collections.abc import Iterator
from typing import Any
from xml.etree import ElementTree

import html5lib
from markdown_it import MarkdownIt

XHTML = "{http://www.w3.org/1999/xhtml}"
SVG = "{http://www.w3.org/2000/svg}"
Shape = Counter[Any]


def html_tree(data: bytes) -> Any:
    """The page, parsed strictly: what a browser would have to guess fails."""
    return html5lib.HTMLParser(strict=True).parse(data)


def html_shape(tree: Any) -> Shape:
    """How many elements of each name with which attributes; a chart is one, whatever is drawn in it."""
    return Counter(
        (element.tag, tuple(sorted(map(str, element.attrib)))) for element in _outside_charts(tree)
    )


def _outside_charts(element: Any) -> Iterator[Any]:
    if isinstance(element.tag, str):
        yield element
        if element.tag == f"{SVG}svg":
            return
    for inner in element:
        yield from _outside_charts(inner)


def scripts(tree: Any) -> tuple[list[str], list[Any]]:
    """The programs of a page, and its blocks of data as data."""
    programs, data = [], []
    for element in tree.iter(f"{XHTML}script"):
        if element.get("type") in ("application/json", "application/ld+json"):
            data.append(json.loads(element.text))
        else:
            programs.append(element.text)
    return programs, data


def charts(tree: Any) -> list[Any]:
    return list(tree.iter(f"{SVG}svg"))


def xml_shape(data: bytes) -> Shape:
    """The same of a feed, by a parser that knows no mercy. Nothing in it is declared."""
    assert b"<!DOCTYPE" not in data
    assert b"<!ENTITY" not in data.replace(b"&lt;!ENTITY", b"")
    return Counter((e.tag, tuple(sorted(e.attrib))) for e in ElementTree.fromstring(data).iter())


def json_shape(value: Any) -> Any:
    """The data with every text replaced by one word."""
    if isinstance(value, dict):
        return {key: json_shape(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [json_shape(inner) for inner in value]
    return "text" if isinstance(value, str) else value


def json_in_any_order(value: Any) -> Any:
    """The same where lists stand in the order of texts, and whole numbers are places in such lists."""
    if isinstance(value, dict):
        return {key: json_in_any_order(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return sorted((json_in_any_order(inner) for inner in value), key=json.dumps)
    if isinstance(value, int) and not isinstance(value, bool):
        return "whole number"
    return "text" if isinstance(value, str) else value


def csv_cells(data: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(data.decode("utf-8"), newline=""), strict=True))


def markdown_shape(text: str) -> Shape:
    """Tokens by kind, as CommonMark with tables and strikes has them."""
    found: Shape = Counter()
    waiting = list(MarkdownIt("commonmark").enable(["table", "strikethrough"]).parse(text))
    while waiting:
        token = waiting.pop()
        if token.type not in ("text", "softbreak", "inline", "text_special"):
            found[token.type] += 1
        waiting += token.children or []
    return found
