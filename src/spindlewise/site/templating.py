"""Templates: HTML with everything escaped, nothing undefined passed over, and figures printed in one way."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from spindlewise.site.addresses import outside, relative
from spindlewise.site.palette import custom_properties
from spindlewise.site.policy import content_policy
from spindlewise.site.unbroken import whole
from spindlewise.units import figure_text, money_text, number_text, points_text

if TYPE_CHECKING:
    from jinja2 import Environment


@dataclass(frozen=True, slots=True)
class Assets:
    """The style and the script that stand in every page, and the policy that allows them and nothing else."""

    style: str
    script: str
    policy: str


@cache
def assets() -> Assets:
    """The style and the script of the site as they stand in the package."""
    return assets_of(custom_properties() + asset("site.css"), asset("sort.js"))


def asset(name: str) -> str:
    """One of the package's own styles or scripts as text."""
    return (files("spindlewise.site") / "assets" / name).read_text("utf-8")


def assets_of(style: str, script: str) -> Assets:
    """A page's style and script with the policy that allows these two."""
    return Assets(style, script, content_policy(style, script))


def chart_sources() -> str:
    """The program text that decides how charts look: a chart drawn by another text is another chart."""
    texts = sorted(
        (entry.name, entry.read_text("utf-8"))
        for entry in (files("spindlewise.site")).iterdir()
        if entry.name.startswith("chart") and entry.name.endswith(".py")
    )
    palette = (files("spindlewise.site") / "palette.py").read_text("utf-8")
    return repr([*texts, palette])


def json_for_script(value: Any) -> str:
    """JSON that can stand inside a script element: nothing in it can end the element or begin a comment.

    >>> json_for_script({"name": "</script><!--"})
    '{"name":"\\\\u003c/script\\\\u003e\\\\u003c!--"}'
    """
    text = json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    for character in "<>&\u2028\u2029":
        text = text.replace(character, f"\\u{ord(character):04x}")
    return text


def day_text(day: date) -> str:
    """A day as it is read everywhere: 2026-11-20."""
    return day.isoformat()


def names_text(products: Iterable[str], names: Mapping[str, str]) -> str:
    """The names of some products in a row."""
    return ", ".join(names[product] for product in products)


@cache
def environment() -> "Environment":
    """The templates, with autoescape on and StrictUndefined; made once."""
    from jinja2 import Environment, FunctionLoader, StrictUndefined

    folder = files("spindlewise.site") / "templates"
    made = Environment(
        loader=FunctionLoader(lambda name: (folder / name).read_text("utf-8")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        auto_reload=False,
    )
    made.filters.update(
        day=day_text,
        names=names_text,
        money=money_text,
        number=number_text,
        points=points_text,
        figure=figure_text,
        outside=outside,
        json_for_script=json_for_script,
        whole=whole,
    )
    return made


def render_page(template: str, page: str, **values: Any) -> bytes:
    """One page as bytes; `page` is where it will stand, from which `to(target)` makes relative addresses."""
    return render_with(assets(), template, page, **values)


def render_with(own: Assets, template: str, page: str, **values: Any) -> bytes:
    """A page that has a style and script of its own in place of the site's."""
    from markupsafe import Markup

    text = (
        environment()
        .get_template(template)
        .render(
            page=page,
            to=lambda target: relative(page, target),
            # the package's own files, not data; checked to hold nothing that would end their element
            style=Markup(own.style),  # noqa: S704  # see above
            script=Markup(own.script),  # noqa: S704  # see above
            policy=own.policy,
            **values,
        )
    )
    return text.encode()
