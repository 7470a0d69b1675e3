"""The whole site as one HTML file: pages are leaves, of which the address shows one; no script is needed."""

import base64
import mimetypes
import posixpath
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from spindlewise.render.fragment import PAGE as WEIGH_PAGE
from spindlewise.site.addresses import product_page
from spindlewise.site.frame import Frame
from spindlewise.site.policy import content_policy
from spindlewise.site.templating import environment, render_page

FILES = "files.html"
"""The leaf that holds what the folder of a site has as files of their own."""

ANY_PRODUCT = product_page("{}")
"""How the script of the weighing page is told where products stand."""

_BODY = re.compile(r"<body>\n(.*)</body>", re.S)
_TITLE = re.compile(r"<title>(.*?)</title>", re.S)
_STYLE = re.compile(r"<style>(.*?)</style>", re.S)
_SCRIPT = re.compile(r"<script>(.*?)</script>", re.S)
_CONTENT = re.compile(r'<main id="content" class="wide"( tabindex="-1")>(.*)</main>', re.S)
_DIVISION = r'<div id="content" class="wide leaf-content"\1>\2</div>'
_ID = re.compile(r'(?<=\s)id="([^"]*)"')
_NAMING = re.compile(r'(?<=\s)(for|headers|aria-labelledby|aria-describedby|aria-controls)="([^"]*)"')
_WITHIN_PICTURE = re.compile(r"url\(#([^)]*)\)")
_ADDRESS = re.compile(r'(?<=\s)(href|data-products)="([^"]*)"')
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:")


@dataclass(frozen=True, slots=True)
class Download:
    """A file as an address that carries all of it (RFC 2397)."""

    path: str
    name: str
    address: str
    size: str


def single_file(made: Mapping[str, bytes], frame: Frame) -> bytes:
    """One HTML of all pages that were gathered; the other files stand in it too, to be saved from it.

    An anchor `products/one.html#claims` becomes `#products.one.html:claims`. The page for weighing oneself
    keeps its ids, which its script knows, and its questions their addresses.
    """
    from markupsafe import Markup

    pages = {path: data.decode() for path, data in made.items() if path.endswith(".html")}
    others = {path: data for path, data in made.items() if path not in pages}
    pages[FILES] = _files_page(others, frame)
    first = "index.html"
    order = [first, *(path for path in pages if path != first)]
    style = _joined(found for path in order for found in _STYLE.findall(pages[path])) + _own("single.css")
    scripts = [found for path in order for found in _SCRIPT.findall(pages[path])]
    script = _joined([*scripts, _own("single.js")])
    # the site's own pages, style and script, in which everything is escaped already
    ours = Markup
    leaves = [(leaf_name(p), ours(_title(pages[p])), ours(_leaf(p, pages, others))) for p in order]
    template = environment().get_template("single.html.j2")
    text = template.render(
        frame=frame,
        leaves=leaves,
        style=ours(style),
        script=ours(script),
        policy=content_policy(style, script),
    )
    return text.encode()


def leaf_name(path: str) -> str:
    """What a page is called in the one file: an id that pictures may have too, which are XML.

    >>> leaf_name("products/one.html")
    'products.one.html'
    """
    return path.replace("/", ".")


@cache
def _own(name: str) -> str:
    return (files("spindlewise.site") / "assets" / name).read_text("utf-8")


def _files_page(others: Mapping[str, bytes], frame: Frame) -> str:
    downloads = [
        Download(
            path=path,
            name=posixpath.basename(path),
            address=f"data:{_kind(path)};base64,{base64.b64encode(data).decode()}",
            size=f"{max(1, round(len(data) / 1000))} kB",
        )
        for path, data in others.items()
    ]
    return render_page("files.html.j2", FILES, frame=frame, section="", downloads=downloads).decode()


def _kind(path: str) -> str:
    own = {".md": "text/markdown", ".csv": "text/csv", ".json": "application/json", ".xml": "application/xml"}
    return own.get(posixpath.splitext(path)[1]) or mimetypes.guess_type(path)[0] or "application/octet-stream"


def _joined(texts: Iterable[str]) -> str:
    """All texts in order, each once; of one that begins with another only what it adds."""
    parts: list[str] = []
    for text in texts:
        for known in parts:
            text = text.removeprefix(known)
        if text and text not in parts:
            parts.append(text)
    return "\n".join(parts)


def _title(page: str) -> str:
    found = _TITLE.search(page)
    return found[1] if found else ""


def _leaf(path: str, pages: Mapping[str, str], others: Mapping[str, bytes]) -> str:
    """The body of a page, with ids and addresses as they are in the one file, of which it is no main part."""
    found = _BODY.search(pages[path])
    body, count = _CONTENT.subn(_DIVISION, found[1] if found else "")
    if count != 1:
        raise ValueError(f"{path} is not a page with one main part")
    body = _SCRIPT.sub("", body)
    if path != WEIGH_PAGE:
        own = leaf_name(path)
        body = _ID.sub(lambda m: f'id="{own}:{m[1]}"', body)
        body = _NAMING.sub(lambda m: f'{m[1]}="{" ".join(f"{own}:{name}" for name in m[2].split())}"', body)
        body = _WITHIN_PICTURE.sub(lambda m: f"url(#{own}:{m[1]})", body)
    return _ADDRESS.sub(lambda m: f'{m[1]}="{_address(path, m[2], pages, others)}"', body)


def _address(path: str, address: str, pages: Mapping[str, str], others: Mapping[str, bytes]) -> str:
    """Where an address of a page leads in the one file; addresses outside stay as they are."""
    if _ELSEWHERE.match(address):
        return address
    target, mark, anchor = address.partition("#")
    whole = posixpath.normpath(posixpath.join(posixpath.dirname(path), target)) if target else path
    if whole == WEIGH_PAGE and mark:
        return f"#{anchor}"
    if whole in pages or whole == ANY_PRODUCT:
        return f"#{leaf_name(whole)}:{anchor}" if mark else f"#{leaf_name(whole)}"
    if whole in others:
        return f"#{FILES}:{leaf_name(whole)}"
    raise ValueError(f"{path} leads to {address}, which is not on the site")
