"""What stands in a drawn picture: its texts, the names of its marks, its colours, its data."""

import re
import xml.etree.ElementTree as ET
from typing import Any

from spindlewise.site.chart_prices import price_chart, price_drawing
from spindlewise.site.palette import DARK, LIGHT
from spindlewise.site.picture import Picture, drawn

LONG = re.compile(r"\d\.\d{4,}")


def texts(picture: Picture) -> list[str]:
    """Every text of the picture, in the order of drawing."""
    tree = ET.fromstring(drawn(picture))
    return [e.text for e in tree.iter() if e.tag in ("text", "tspan") and e.text]


def marks(picture: Picture) -> list[str]:
    """The names of all marks."""
    return [name for e in ET.fromstring(drawn(picture)).iter() if (name := e.get("aria-label"))]


def in_order(picture: Picture) -> None:
    """Hold a picture to what every picture keeps."""
    import altair

    svg = drawn(picture)
    tree = ET.fromstring(svg)
    title, said = tree.find("title"), tree.find("desc")
    assert title is not None
    assert said is not None
    assert (title.text, said.text) == (picture.title, picture.description)
    assert tree.get("aria-labelledby") == title.get("id")
    assert tree.get("aria-describedby") == said.get("id")
    assert "style=" not in svg
    assert "font-family" not in svg
    assert not any(f'"{colour}"' in svg for colour in {*LIGHT.values(), *DARK.values()})
    assert not re.findall(r'(?:fill|stroke)="(?!var|none|transparent)[^"]*"', svg)
    assert [name for name in [*marks(picture), *texts(picture)] if LONG.search(name)] == []
    altair.Chart.from_dict(in_the_grammar(picture))  # validates the specification


def in_the_grammar(picture: Picture) -> dict[str, Any]:
    """The specification in the chart library's grammar, also of a picture that is compiled before."""
    specify = price_chart if picture.specify is price_drawing else picture.specify
    return specify(picture.shown)


def rows_with(picture: Picture, *keys: str) -> list[dict[str, Any]]:
    """The rows of the picture's data that have all these keys."""
    sets = in_the_grammar(picture)["datasets"].values()
    return [row for rows in sets for row in rows if set(keys) <= row.keys()]
