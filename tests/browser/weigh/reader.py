"""What a test does as a reader of the page: open it, wait, and look."""

import re
from collections.abc import Callable
from typing import Any


def opened(read: Callable[..., Any], link: str = "", **options: Any) -> Any:
    reader = read(**options)
    page = reader.page
    page.goto((reader.folder / "weigh.html").as_uri() + link)
    page.reader = reader
    return settled(page)


def settled(page: Any) -> Any:
    """The page once all that follows the ranking is drawn; without a script nothing follows."""
    page.locator("#w-follows[aria-busy]").wait_for(state="detached")
    return page


def first(page: Any) -> str:
    return page.locator("#w-table tbody tr").first.locator("th").inner_text().split("\n")[0].strip()


def address(page: Any) -> str:
    """Where the page stands now: what the driver is told may lag behind."""
    return page.evaluate("location.href")


def said(page: Any) -> str:
    """What a screen reader is told, once something is."""
    status = page.get_by_role("status").filter(has_text=re.compile(r"\S"))
    status.wait_for(state="attached")
    return status.inner_text()


def parts(link: str) -> dict[str, Any]:
    """A fragment by its keys, with the points as numbers: a YAML file keeps fifteen digits of them."""
    found: dict[str, Any] = {}
    for part in link.split("&"):
        key, _, value = part.partition("=")
        found.setdefault(key, []).append(value)
    stated = (entry.split(":") for entry in found["points"][0].split(","))
    return {**found, "points": {name: float(value) for name, value in stated}}


def shares_of(page: Any) -> list[str]:
    return page.locator(".w-share").all_inner_texts()
