"""Style and script of the page on which readers weigh for themselves, and the policy that allows both."""

from functools import cache
from importlib.resources import files

from spindlewise.site.policy import content_policy
from spindlewise.site.templating import Assets, assets

SCRIPTS = (
    *("numbers", "curves", "reading", "needs", "money", "order", "ranking", "ladder", "swap"),
    *("versus", "weight_change"),
    *("worlds", "question", "said"),
    *("later", "elements", "form", "table", "first", "reasons"),
    *("pictures", "price_score", "contributions", "worlds_part", "swap_picture", "swap_part"),
    *("ladder_picture", "ladder_part", "turns_part", "versus_part", "copies", "follows", "page"),
)
"""In this order: each uses what those before it define."""


@cache
def weigh_assets() -> Assets:
    """The site's own style with the page's, and the page's script as one text."""
    folder = files("spindlewise.site") / "assets"
    style = assets().style + (folder / "weigh.css").read_text("utf-8")
    script = "".join((folder / "weigh" / f"{name}.js").read_text("utf-8") for name in SCRIPTS)
    return Assets(style, script, content_policy(style, script))
