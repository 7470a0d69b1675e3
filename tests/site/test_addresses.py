import pytest

from spindlewise.site.addresses import buyer_page, outside, product_page, region_page, relative


@pytest.mark.parametrize(
    ("page", "target", "expected"),
    [
        ("index.html", "products/a.html", "products/a.html"),
        ("products/a.html", "index.html", "../index.html"),
        ("products/a.html", "products/b.html#links", "b.html#links"),
        ("products/a.html", "products/a.html#links", "#links"),
        ("buyers/x.html", "data/ranking-x.json", "../data/ranking-x.json"),
    ],
)
def test_relative(page, target, expected):
    assert expected == relative(page, target)


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JavaScript:alert(1)",
        "data:text/html,hello",
        "file:///etc/passwd",
        "vbscript:x",
        "//maker.example/x",
        "https://",
        "https:maker",
        "https://maker.example/a b",
        'https://maker.example/"onclick',
        "https://maker.example/\u202e",
        "https://[bad",
        "",
        None,
    ],
)
def test_an_address_of_another_scheme_or_shape_is_no_link(address):
    assert outside(address) is None


def test_web_addresses_are_links():
    assert outside("https://maker.example/a?b=c&d") == "https://maker.example/a?b=c&d"


def test_where_pages_stand():
    assert (product_page("a"), buyer_page("b")) == ("products/a.html", "buyers/b.html")
    assert (region_page("EU", "EU"), region_page("US", "EU")) == ("index.html", "regions/us.html")
