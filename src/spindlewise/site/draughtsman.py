"""Whoever draws: one function that another process can run without knowing anything of catalogs."""

from typing import Any


def svg_of(specification: dict[str, Any]) -> str:
    """The SVG of a Vega-Lite specification, or of one compiled to Vega, as the chart library draws it."""
    import vl_convert

    plain = "/vega-lite/" in specification["$schema"]
    found: str = (vl_convert.vegalite_to_svg if plain else vl_convert.vega_to_svg)(specification)
    return found
