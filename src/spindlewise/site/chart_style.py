"""What all charts share: type sizes, axes in the page's colours, and templates built once and filled in."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from spindlewise.site.palette import LIGHT

if TYPE_CHECKING:
    import altair

TEXT_PX = 13
NAME_PX = 14
ROW_PX = 34
"""Height of one row of a chart that has a product in each."""
MOST_ROWS = 12
"""More rows than this are told in the table only: nobody reads them in a picture."""


def template(chart: "altair.TopLevelMixin") -> dict[str, Any]:
    """The chart as a specification, in the site's own style, with the words in it that `filled` replaces."""
    styled = (
        chart.configure_view(stroke=None)
        .configure_axis(
            labelColor=LIGHT["quiet"],
            titleColor=LIGHT["ink"],
            gridColor=LIGHT["rule"],
            domainColor=LIGHT["edge"],
            tickColor=LIGHT["edge"],
            labelFontSize=TEXT_PX,
            titleFontSize=TEXT_PX,
            labelLimit=0,
            titleLimit=0,
        )
        # the reader's font may be wider than the one that the labels were measured with
        .configure_axisY(titlePadding=18)
        .properties(background="transparent")
    )
    # building and checking one of these takes as long as drawing it; the tests check each kind once
    found: dict[str, Any] = styled.to_dict(validate=False)
    return found


def filled(template: Any, words: Mapping[str, Any]) -> Any:
    """The template with each string that is one of the words replaced by what it stands for.

    A list of one such word becomes what it stands for: the chart library wants lists in some places.

    >>> filled({"data": "@rows", "domain": ["@rows"], "two": [1, "@rows"]}, {"@rows": [5]})
    {'data': [5], 'domain': [5], 'two': [1, [5]]}
    """
    if isinstance(template, dict):
        return {key: filled(value, words) for key, value in template.items()}
    if isinstance(template, list):
        if len(template) == 1 and isinstance(template[0], str):
            return words.get(template[0], template)
        return [filled(value, words) for value in template]
    if isinstance(template, str):
        return words.get(template, template)
    return template
