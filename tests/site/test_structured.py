import json
import re
from datetime import date

import worlds
from spindlewise.site.structured import product_data
from spindlewise.units import money_text

BLOCK = re.compile(r'<script type="application/ld\+json">(.*?)</script>', re.S)


def on_page(page):
    (found,) = BLOCK.findall(page)
    return json.loads(found)


def test_every_product_page_of_the_demo_agrees_with_its_own_data(site):
    from decimal import Decimal

    offers = 0
    for product in site.catalog.products.values():
        page = (site.folder / "products" / f"{product.id}.html").read_text("utf-8")
        told = on_page(page)
        assert told["name"] == f"{product.maker} {product.name}"
        assert told["disambiguatingDescription"].startswith("Demonstration only. Everything here is invented")
        assert not {"aggregateRating", "review"} & told.keys()
        rows = [row for row in re.findall(r"<tr>.*?</tr>", page, re.S) if "<td>in force</td>" in row]
        assert len(rows) == len(told.get("offers", []))
        for offer in told.get("offers", []):
            price = money_text(Decimal(offer["price"]), offer["priceCurrency"])
            seller = offer["seller"]["name"]
            assert any(price in row and seller in row and offer["validFrom"] in row for row in rows)
            assert offer.get("priceValidUntil", "9") >= site.day.isoformat()
            offers += 1
    assert offers > 100


def test_what_is_expired_or_later_is_no_offer_and_a_real_catalog_is_no_demonstration():
    rows = [
        worlds.price("heron", 500, valid_until=date(2026, 10, 9), kind="offer"),
        worlds.price("heron", 400, date=date(2026, 12, 1)),
        worlds.price("heron", 550, kind="list", seller="Invented Works", tax="out"),
        worlds.price("heron", 480, kind="offer", valid_until=date(2026, 12, 1), seller="Other"),
    ]
    product = worlds.product("heron")
    catalog = worlds.catalog([product], rows)
    told = product_data(catalog, product, worlds.DAY)
    assert [(o["price"], o.get("priceValidUntil")) for o in told["offers"]] == [
        ("550.00", None),
        ("480.00", "2026-12-01"),
    ]
    assert told["offers"][0]["priceSpecification"]["priceType"] == "https://schema.org/ListPrice"
    assert told["offers"][0]["priceSpecification"]["valueAddedTaxIncluded"] is False
    assert told["weight"] == {"@type": "QuantitativeValue", "value": 330.0, "unitCode": "GRM"}


def test_without_price_weight_or_invention_nothing_is_said_of_them():
    from dataclasses import replace

    product = worlds.product("heron", {"weight_g": "unknown"})
    catalog = worlds.catalog([product], [])
    real = replace(catalog, settings=catalog.settings.model_copy(update={"invented": "no"}))
    told = product_data(real, product, worlds.DAY)
    assert not {"offers", "weight", "disambiguatingDescription"} & told.keys()


def test_a_hostile_name_cannot_end_the_block():
    from spindlewise.site.pages import gather

    product = worlds.product("heron", maker="</script><script>alert(1)</script>")
    made = gather(worlds.catalog([product], [worlds.price("heron", 500)]), {}, worlds.DAY)
    page = made["products/heron.html"].decode()
    assert on_page(page)["brand"]["name"] == product.maker
    assert "<script>alert" not in page
