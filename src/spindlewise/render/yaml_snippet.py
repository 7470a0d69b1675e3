"""Observations from the bench as YAML, indented as a product's file wants them, to paste."""

import json
import re
from collections.abc import Iterable, Sequence

from spindlewise.answer.bench_observation import BenchObservation

_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9 .()%/_-]*[A-Za-z0-9.)%]")
_PLAIN_LINE = re.compile(r"[A-Za-z][A-Za-z0-9 .,;()%/_-]*[A-Za-z0-9.)%]")
_MISREAD = frozenset({"on", "off", "yes", "no", "true", "false", "null"})

PASTE = (
    "# Add each entry to the product's own file, under observations and this key; replace nothing there.\n"
)


def snippet_yaml(observations: Iterable[BenchObservation]) -> str:
    """The observations by product and attribute, in the order given; "" for none.

    The first level is the product's id in place of `observations`, so that every entry has the indent that it
    needs in the product's file.
    """
    by_product: dict[str, dict[str, list[BenchObservation]]] = {}
    for each in observations:
        by_product.setdefault(each.product, {}).setdefault(each.attribute, []).append(each)
    lines = []
    for product, attributes in by_product.items():
        lines.append(f"{product}:")
        for attribute, entries in attributes.items():
            lines.append(f"  {attribute}:")
            for entry in entries:
                lines += _entry(entry)
    return PASTE + "".join(f"{line}\n" for line in lines) if lines else ""


def record_yaml(product: str, observations: Sequence[BenchObservation]) -> str:
    """The observations of one product as a file of the catalog's bench, with the recordings behind them."""
    lines = [
        "# yaml-language-server: $schema=../../../schemas/observations.schema.json",
        "# What the bench measured. The catalog reads it beside the product's own file.",
        "# Do not change it: a newer measurement is a newer file.",
        "schema: spindlewise observations 1",
        f"product: {product}",
    ]
    recordings = dict.fromkeys(raw for each in observations for raw in each.recordings)
    if recordings:
        lines.append("recordings:")
        for name, digest in recordings:
            lines += [f"  - file: {scalar(name)}", f"    sha256: {json.dumps(digest)}"]
    lines.append("observations:")
    for attribute in dict.fromkeys(each.attribute for each in observations):
        lines.append(f"  {attribute}:")
        for each in observations:
            if each.attribute == attribute:
                lines += _entry(each)
    return "".join(f"{line}\n" for line in lines)


def scalar(text: str, in_flow: bool = False) -> str:
    """The text as YAML: plain where no reader can take it for anything else, in double quotes otherwise.

    >>> scalar("counter scale A"), scalar("off"), scalar("a: b")
    ('counter scale A', '"off"', '"a: b"')
    """
    plain = (_PLAIN if in_flow else _PLAIN_LINE).fullmatch(text)
    return text if plain and text.casefold() not in _MISREAD else json.dumps(text, ensure_ascii=False)


def figure(value: float) -> str:
    """A figure as an author would write it: whole numbers without a point.

    >>> figure(404.0), figure(-0.8)
    ('404', '-0.8')
    """
    return str(int(value)) if float(value).is_integer() else repr(float(value))


def _entry(each: BenchObservation) -> list[str]:
    lines = [
        "    - grade: measured",
        f"      date: {each.date.isoformat()}",
        f"      source: {scalar(each.source)}",
    ]
    if each.note:
        lines.append(f"      note: {scalar(each.note)}")
    known = "unknown" if each.plus_minus is None else figure(each.plus_minus)
    lines += [f"      value: {figure(each.value)}", f"      plus_minus: {known}"]
    if each.basis:
        parts = ", ".join(f"{key}: {scalar(words, in_flow=True)}" for key, words in each.basis.items())
        lines.append(f"      basis: {{{parts}}}")
    return lines
