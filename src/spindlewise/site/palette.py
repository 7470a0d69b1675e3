"""The site's colours by what they are for, in light and in dark, and the pairs that must stand apart."""

from collections.abc import Mapping

TEXT_CONTRAST = 4.5
"""Least contrast of text on its ground (WCAG 2.2, 1.4.3, level AA)."""
GRAPHIC_CONTRAST = 3.0
"""Least contrast of controls and graphics on their ground (WCAG 2.2, 1.4.11)."""

LIGHT: Mapping[str, str] = {
    "ground": "#f7f6f2",
    "sheet": "#ffffff",
    "band": "#eeece4",
    "rule": "#d9d5c9",
    "edge": "#77756c",
    "ink": "#1f2430",
    "quiet": "#585b63",
    "accent": "#3b3f8f",
    "accent-soft": "#e6e6f4",
    "span": "#8083b8",
    "track": "#e2dfd5",
    "caution": "#8a3b00",
    "caution-soft": "#fdf0e1",
    "caution-edge": "#b45a12",
    "focus": "#3b3f8f",
}

DARK: Mapping[str, str] = {
    "ground": "#15171c",
    "sheet": "#1c1f26",
    "band": "#262a33",
    "rule": "#383d48",
    "edge": "#8b909c",
    "ink": "#e9e8e3",
    "quiet": "#aeb1b9",
    "accent": "#aab0f5",
    "accent-soft": "#2b2e4a",
    "span": "#7a80c4",
    "track": "#343945",
    "caution": "#ffbf85",
    "caution-soft": "#38281a",
    "caution-edge": "#d98b47",
    "focus": "#c3c7ff",
}

TEXT_PAIRS: tuple[tuple[str, str], ...] = (
    ("ink", "ground"),
    ("ink", "sheet"),
    ("ink", "band"),
    ("ink", "accent-soft"),
    ("ink", "caution-soft"),
    ("quiet", "ground"),
    ("quiet", "sheet"),
    ("quiet", "band"),
    ("accent", "ground"),
    ("accent", "sheet"),
    ("accent", "band"),
    ("accent", "accent-soft"),
    ("accent", "caution-soft"),
    ("caution", "sheet"),
    ("caution", "ground"),
    ("caution", "caution-soft"),
)
"""Text colour, then its ground."""

GRAPHIC_PAIRS: tuple[tuple[str, str], ...] = (
    ("edge", "sheet"),
    ("edge", "ground"),
    ("edge", "band"),
    ("accent", "track"),
    ("span", "sheet"),
    ("caution-edge", "sheet"),
    ("caution-edge", "ground"),
    ("caution-edge", "caution-soft"),
    ("focus", "ground"),
    ("focus", "sheet"),
    ("focus", "band"),
)
"""Colour of a mark or a control's edge, then its ground."""


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance in sRGB).

    >>> round(contrast("#767676", "#ffffff"), 3)
    4.542
    """
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def luminance(colour: str) -> float:
    """The relative luminance of a colour written as #rrggbb, 0 for black and 1 for white (WCAG 2.2)."""
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(share: float) -> float:
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def custom_properties() -> str:
    """The palette as CSS: light, dark where the reader's system asks for it, and light again on paper."""
    light, dark = _declared(LIGHT), _declared(DARK)
    return (
        f":root{{color-scheme:light dark;{light}}}\n"
        f"@media (prefers-color-scheme:dark){{:root{{{dark}}}}}\n"
        f"@media print{{:root{{color-scheme:light;{light}}}}}\n"
    )


def _declared(colours: Mapping[str, str]) -> str:
    return "".join(f"--{name}:{value};" for name, value in colours.items())
