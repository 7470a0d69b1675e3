"""One or more pages of each kind that the demo's site has; a test holds the list to the site."""

KINDS = {
    "index.html": ["index.html"],
    "regions": ["regions/us.html"],
    "products": [
        "products/yttervane-koldrane.html",
        "products/lommerside-trasket.html",
        "products/osmeryd-avessin.html",
    ],
    "buyers": ["buyers/club-racer.html", "buyers/nothing-for-it.html", "buyers/index.html"],
    "pairs": ["pairs/index.html", "pairs/club-racer.html"],
    "weigh.html": ["weigh.html"],
    "bench": ["bench/index.html", "bench/sessions.html", "bench/weighings.html", "bench/hours.html"],
    "bench/rides": ["bench/rides/2025-10-18-three-meters.html", "bench/rides/2025-09-13-first-ride.html"],
    "changes.html": ["changes.html"],
    "claims.html": ["claims.html"],
    "method.html": ["method.html"],
    "disclosure.html": ["disclosure.html"],
    "cautions.html": ["cautions.html"],
}
PAGES = [page for pages in KINDS.values() for page in pages]


def kind(page: str) -> str:
    """The kind of a page by its path on the site: its folder, or itself where it stands alone.

    >>> kind("products/one.html"), kind("bench/rides/one.html"), kind("method.html")
    ('products', 'bench/rides', 'method.html')
    """
    return page.rpartition("/")[0] or page
