"""Addresses on the web as an author may write them: only a plain http or https one becomes a link."""

from pathlib import Path
from urllib.parse import urlsplit

import pytest
from pydantic import TypeAdapter, ValidationError

from hostile.payloads import HIDDEN, PAYLOADS
from hostile.poisoned import DAY, address_fields, changed, opened, write_yaml, written
from hostile.shapes import XHTML, html_tree
from spindlewise.catalog.model import Address
from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.site import pages
from spindlewise.site.addresses import outside

PRODUCTS = 13
OTHERS = ("https://elsewhere.example/", "http://x")
"""A host with a payload behind it, and one that the payload begins in."""
SCHEMES = (
    "javascript:ran=1", "JaVaScRiPt:ran=1", " javascript:ran=1", "java\tscript:ran=1", "java\nscript:ran=1",
    "\x01javascript:ran=1", "javascript&colon;ran=1", "javascript://elsewhere.example/%0aran=1", "vbscript:x",
    "data:text/html,x", "data:image/svg+xml,<svg onload=ran=1>", "blob:https://elsewhere.example/x", "file:///etc",
    "ftp://elsewhere.example/", "mailto:a@elsewhere.example", "tel:1", "about:blank", "view-source:https://x.example",
    "//elsewhere.example/", "/\\elsewhere.example", "https:elsewhere.example", "https:/elsewhere.example", "https://",
    "https:///x", "https://?x", "https://[", "https://[::1", "http:\\\\elsewhere.example", "HTTPS", "",
)  # fmt: skip


@pytest.mark.parametrize("address", [*SCHEMES, *(f"https://x.example/{text}" for text in HIDDEN)])
def test_what_is_no_plain_address_is_refused_or_shown_as_text_alone(address: str) -> None:
    assert outside(address) is None
    for text in (address, f"https://x.example/ {address}"):
        assert outside(text) is None


@pytest.mark.parametrize("address", [text for text in SCHEMES if "https:" not in text[:6] or len(text) < 9])
def test_no_author_writes_another_scheme(address: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Address).validate_python(address)


def test_every_link_of_a_poisoned_site_leads_to_its_own_pages_or_to_a_plain_address(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All payloads behind a host, and in place of one, in both fields that take an address."""
    monkeypatch.setattr(
        pages, "draw_all", lambda all_, *_: dict.fromkeys((p.key for p in all_), "<svg></svg>")
    )
    fields = address_fields("product-1")
    assert len(fields) == 2
    followed: set[str] = set()
    for begun in range(0, len(PAYLOADS), PRODUCTS):
        folder = written(tmp_path / str(begun), lambda k: f"Plain {k}", PRODUCTS, buyers=1)
        for n, text in enumerate(PAYLOADS[begun : begun + PRODUCTS]):
            path = folder / "products" / f"pedal-{n}.yaml"
            document, _ = read_yaml(path, path.name)
            assert document is not None
            made = changed(document.data, ("safety_notices", 0, "ended"), "none")
            for way, start in zip(fields, OTHERS, strict=True):
                made = changed(made, way, f"{start}{text}"[:400])
            write_yaml(path, made)
        catalog, buyers = opened(folder)
        for name, data in pages.gather(catalog, buyers, DAY).items():
            if name.startswith(("products/", "cautions")):
                links = html_tree(data).iter(f"{XHTML}a")
                followed |= {link.get("href") for link in links if link.get("href")}
    away = {href for href in followed if urlsplit(href).scheme}
    assert len(away) > 20
    for href in away:
        assert href.startswith((*OTHERS, "https://example-works.example/"))
        assert not set(href) & set(" \"'<>`\\")
