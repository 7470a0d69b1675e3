"""A drawn chart at home in a page: the page's colours and fonts, a name, a description, short numbers."""

import re
import xml.etree.ElementTree as ET
from functools import lru_cache

from spindlewise.site.palette import LIGHT

INKS = (
    "ink", "quiet", "rule", "accent", "accent-soft", "span", "track", "edge", "sheet", "band", "caution-edge",
)  # fmt: skip
"""The colours that a chart may use; drawn in the light palette, they become the page's properties."""

WIDER_PX = 1.8
"""By so much a character of a reader's font may be wider than the one that the chart was laid out with."""

NOT_WANTED = frozenset(("font-family", "class", "xmlns"))
LONG_NUMBER = re.compile(r"-?\d*\.\d{3,}(?:e-?\d+)?")
MEASURES = frozenset(("d", "transform", "x", "y", "x1", "x2", "y1", "y2", "width", "height"))
_COLOURS = {LIGHT[ink]: f"var(--{ink})" for ink in INKS}


def at_home(svg: str, name: str, key: str, title: str, description: str) -> str:
    """The SVG as an element of a page; `name` makes its ids, `key` is what it is found again by.

    Raises ValueError where what was drawn is no SVG with a size.
    """
    root = _parsed(svg)
    width, height = _size(root)
    left, right = _slack(root)
    width += left + right
    home = ET.Element(
        "svg",
        {
            "class": "chart",
            "data-drawn": key,
            "viewBox": f"{-left} 0 {width} {height}",
            "width": str(width),
            "height": str(height),
            "role": "img",
            "aria-labelledby": f"picture-{name}-title",
            "aria-describedby": f"picture-{name}-said",
        },
    )
    ET.SubElement(home, "title", {"id": f"picture-{name}-title"}).text = title
    ET.SubElement(home, "desc", {"id": f"picture-{name}-said"}).text = description
    _make_plain(root)
    home.extend(list(root))
    return ET.tostring(home, encoding="unicode", short_empty_elements=False)


def _parsed(svg: str) -> ET.Element:
    try:
        root = ET.fromstring(svg)  # noqa: S314  # drawn a moment ago by the chart library, from our own data
    except ET.ParseError as error:
        raise ValueError(f"the renderer gave no SVG: {error}") from error
    if not root.tag.endswith("}svg"):
        raise ValueError("the renderer gave no SVG; its version may be too new")
    return root


def _size(root: ET.Element) -> tuple[int, int]:
    box = root.get("viewBox", "").split()
    if len(box) != 4:
        raise ValueError("the renderer gave no SVG with a viewBox; its version may be too new")
    return round(float(box[2])), round(float(box[3]))


def _slack(root: ET.Element) -> tuple[int, int]:
    """Room to the left and the right for readers whose font is wider than the one it was drawn with."""
    texts = [element for element in root.iter() if element.tag.endswith("}text")]
    ending = [len(t.text or "") for t in texts if t.get("text-anchor") == "end"]
    beginning = [len(t.text or "") for t in texts if t.get("text-anchor") in (None, "start")]
    left, right = (round(4 + WIDER_PX * max(lengths, default=0)) for lengths in (ending, beginning))
    return left, right


def _make_plain(root: ET.Element) -> None:
    """Take namespaces, fonts and needless decimals from all elements, and give them the page's colours."""
    for element in root.iter():
        element.tag = element.tag.rpartition("}")[2]
        element.attrib = {
            name: _shortened(value) if name in MEASURES and "." in value else _COLOURS.get(value, value)
            for name, value in element.attrib.items()
            if name not in NOT_WANTED and name[0] != "{"
        }


@lru_cache(maxsize=4096)  # ticks and marks of many charts stand in the same places
def _shortened(value: str) -> str:
    return LONG_NUMBER.sub(_short, value)


def _short(number: re.Match[str]) -> str:
    return f"{round(float(number[0]), 2) + 0.0:g}"
