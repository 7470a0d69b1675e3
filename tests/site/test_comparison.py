"""A region's page, its sheet, its JSON and its Markdown tell the same numbers of the same pedals."""

import csv
import io
import json
import re

import html5lib
import pytest

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.site.addresses import region_page
from spindlewise.site.comparison import comparison_csv, comparison_markdown, region_comparison
from spindlewise.units import figure_text, points_text

XHTML = "{http://www.w3.org/1999/xhtml}"
REGIONS = ["EU", "US", "JP"]


def words(element):
    return " ".join("".join(element.itertext()).split())


def page_rows(site, region):
    """By product id: place, score, low and high, price and weight, as a reader of the page sees them."""
    text = (site.folder / region_page(region, "EU")).read_bytes()
    (table,) = (
        t
        for t in html5lib.HTMLParser(strict=True).parse(text).iter(f"{XHTML}table")
        if "ranked" in t.get("class", "").split()
    )
    found = {}
    for row in table.find(f"{XHTML}tbody"):
        product = row.find(f".//{XHTML}a").get("href").rpartition("/")[2].removesuffix(".html")
        cells = {cell.get("data-label"): cell for cell in row.iter(f"{XHTML}td")}
        first = {label: words(cell.find(f"{XHTML}span")) for label, cell in cells.items() if len(cell)}
        low, high = words(cells["Score"].findall(f"{XHTML}span")[1]).split(" to ")
        found[product] = {
            "place": words(cells["Place"]),
            "score": (first["Score"], low, high),
            "price": first["Price"],
            "weight": first["Weight of the pair"].partition(" ±")[0].partition(" from")[0],
        }
    return found


def data(site, region, ending):
    return (site.folder / "data" / f"comparison-{region.lower()}.{ending}").read_text("utf-8")


@pytest.mark.parametrize("region", REGIONS)
def test_the_page_and_all_that_is_taken_along_agree(site, region):
    page = page_rows(site, region)
    assert len(page) > 5
    currency = site.catalog.settings.regions[region].currency
    sheet = list(csv.DictReader(io.StringIO(data(site, region, "csv"), newline=""), strict=True))
    whole = json.loads(data(site, region, "json"))
    marked = {}
    for line in data(site, region, "md").splitlines():
        cells = re.split(r"(?<!\\) \| ", line.strip("| "))
        if len(cells) > 5 and cells[1] not in ("Product", "---"):
            marked[cells[1].replace("\\", "")] = cells
    ranked = [row for row in sheet if not row["out_because"]]
    assert [row["product"] for row in ranked] == [told["product"] for told in whole["order"]] == list(page)
    assert list(marked) == [row["name"] for row in ranked]
    for row, told in zip(ranked, whole["order"], strict=True):
        shown, in_table = page[row["product"]], marked[row["name"]]
        scores = tuple(points_text(told["score"][end]) for end in ("expected", "low", "high"))
        assert (row["score"], row["score_low"], row["score_high"]) == scores == shown["score"]
        assert (in_table[2], in_table[3]) == (scores[0], f"{scores[1]} to {scores[2]}")
        assert row[f"price_{currency}"] == told["price"]["amount"]
        assert shown["price"] == in_table[4] == f"{currency} {grouped(told['price']['amount'])}"
        weight = told["merits"]["weight"]
        assert row["weight_status"] == weight["grade"]
        if weight["value"] is None:
            assert (row["weight_g"], shown["weight"]) == ("", weight["grade"])
            assert in_table[6] == weight["grade"]
        else:
            text = figure_text(weight["value"], "g")
            assert float(row["weight_g"]) == pytest.approx(weight["value"], abs=0.05)
            assert shown["weight"] == text
            assert in_table[6].startswith(text)
        assert shown["place"].split(" to ")[0] == row["place"]
        if not told["held_back"]:
            assert in_table[0] == shown["place"]
        level = told["break_even"]
        assert row[f"draws_level_at_{currency}"] == (level["amount"] if level else "")
    out = {row["product"]: row["out_because"] for row in sheet if row["out_because"]}
    assert out == {told["product"]: "; ".join(told["because"]) for told in whole["excluded"]}


def grouped(amount: str) -> str:
    units, point, minor = amount.partition(".")
    return f"{int(units):,}{point}{minor}"


def test_the_sheet_is_rfc_4180_with_a_status_beside_each_figure(site):
    text = (site.folder / "data" / "comparison-eu.csv").read_bytes().decode()
    lines = text.split("\r\n")
    assert lines[-1] == ""
    assert "\n" not in "".join(lines)
    header, *rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    assert {len(row) for row in rows} == {len(header)}
    for name in header:
        if name.endswith("_status"):
            at = header.index(name)
            for row in rows:
                assert row[at] != ""
                assert (row[at - 1] == "") == (
                    row[at] in ("unknown", "none", "not applicable", "stands first") or "no price" in row[at]
                ), (name, row)


def test_a_hostile_name_runs_nowhere():
    product = worlds.product("heron", maker="=cmd|x").model_copy(update={"name": "a|b <i>"})
    desk = worlds.desk([product], [worlds.price("heron", 500)])
    comparison = region_comparison(desk, "EU")
    assert b"'=cmd|x a|b <i>" in comparison_csv(desk, comparison)
    assert b"=cmd\\|x a\\|b \\<i\\>" in comparison_markdown(desk, comparison)


def test_nothing_for_sale_is_a_table_of_what_is_out():
    desk = worlds.desk([worlds.product("heron")], [])
    text = comparison_markdown(desk, region_comparison(desk, "EU")).decode()
    assert "## Out, and why" in text
    assert "First at" not in text


def test_nothing_in_the_catalog_is_said_by_a_head_alone():
    desk = worlds.desk([], [])
    assert "Out" not in comparison_markdown(desk, region_comparison(desk, "EU")).decode()


def test_a_region_without_a_rate_has_no_comparison(site):
    rates = type(site.catalog.rates)(())
    from dataclasses import replace

    desk = Desk(replace(site.catalog, rates=rates), site.day)
    assert region_comparison(desk, "JP") is None
