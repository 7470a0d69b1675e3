"""Addresses on the site: relative ones between its pages, and which outside addresses may become links."""

import posixpath
from functools import lru_cache
from urllib.parse import urlsplit

ALLOWED_SCHEMES = ("https", "http")

PAIRS_PAGE = "pairs/index.html"
"""Where all pairs are listed."""


def relative(page: str, target: str) -> str:
    """The address of `target` as seen from `page`, both from the site's root; works from a folder on disk.

    >>> relative("products/one.html", "index.html"), relative("index.html", "method.html#score")
    ('../index.html', 'method.html#score')
    """
    path, mark, anchor = target.partition("#")
    if path == page and mark:
        return f"#{anchor}"
    return _from_folder(posixpath.dirname(page), path) + mark + anchor


@lru_cache(maxsize=4096)  # every page has the same menu, and most stand in one folder
def _from_folder(folder: str, path: str) -> str:
    return posixpath.relpath(path, folder or ".")


def outside(address: str | None) -> str | None:
    """The address where its scheme may be followed from a page, else nothing: it is then shown as text only.

    >>> outside("https://maker.example/sheet"), outside("javascript:alert(1)"), outside(None)
    ('https://maker.example/sheet', None, None)
    """
    if address is None:
        return None
    try:
        parts = urlsplit(address)
    except ValueError:
        return None
    plain = address.isprintable() and not any(c in address for c in " \"'<>\\`")
    return address if plain and parts.scheme in ALLOWED_SCHEMES and parts.hostname else None


def product_page(product: str) -> str:
    """Where a product's page stands."""
    return f"products/{product}.html"


def buyer_page(buyer: str) -> str:
    """Where a buyer's page stands."""
    return f"buyers/{buyer}.html"


def pair_page(buyer: str) -> str:
    """Where a buyer's pick stands beside what comes next."""
    return f"pairs/{buyer}.html"


def region_page(region: str, first: str) -> str:
    """Where a region's table stands: the first region's is the front page."""
    return "index.html" if region == first else f"regions/{region.lower()}.html"
