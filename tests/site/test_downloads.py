import csv
import io
import json
from datetime import date

import worlds
from spindlewise.answer.reply import reply_to
from spindlewise.site.downloads import prices_csv, products_csv, products_json, ranking_json

LATE = date(2026, 12, 24)


def desk():
    products = [
        worlds.product(
            "heron", {"weight_g": (worlds.weighed(330), worlds.weighed(222, date=LATE))}
        ).model_copy(update={"name": "=1+1"}),
        worlds.product("siskin", {"weight_g": "unknown"}),
    ]
    prices = [
        worlds.price("heron", 500),
        worlds.price("siskin", 450),
        worlds.price("heron", 333, date=LATE, line=9),
    ]
    return worlds.desk(products, prices)


def table(data: bytes):
    return list(csv.DictReader(io.StringIO(data.decode(), newline="")))


def test_products_csv_has_figures_with_grade_and_says_what_is_unknown():
    heron, siskin = table(products_csv(desk()))
    assert (heron["weight_g"], heron["weight_low_g"], heron["weight_high_g"]) == ("330.0", "329.0", "331.0")
    assert heron["weight_grade"] == "measured"
    assert (siskin["weight_g"], siskin["weight_grade"]) == ("", "unknown")


def test_no_cell_is_run_as_a_formula():
    heron, _ = table(products_csv(desk()))
    assert heron["name"] == "'=1+1"


def test_prices_csv_ends_at_the_day():
    rows = table(prices_csv(desk()))
    assert [row["amount"] for row in rows] == ["500.00", "450.00"]
    assert list(rows[0])[:2] == ["date", "product"]


def test_products_json_has_nothing_dated_later():
    whole = json.loads(products_json(desk()))
    assert whole["schema"] == "spindlewise products 1"
    heron, siskin = whole["products"]
    assert [seen["value"] for seen in heron["observations"]["weight_g"]] == [330.0]
    assert siskin["observations"]["weight_g"] == "unknown"
    assert heron["links"][0]["carries"][0]["since"] == "2025-01-01"


def test_promises_stay_since_they_have_no_day():
    promised = {
        "what": "balance",
        "how": "carried",
        "since": "promised",
        "firmware": "unknown",
        "source": "letter",
    }
    link = worlds.link("ANT+", balance="absent")
    link["carries"] = (*link["carries"], promised)
    whole = json.loads(products_json(worlds.desk([worlds.product("heron", links=(link,))], [])))
    assert whole["products"][0]["links"][0]["carries"][-1]["since"] == "promised"


def test_ranking_json_has_the_keys_of_the_command():
    whole = json.loads(ranking_json(reply_to(desk(), worlds.buyer())))
    assert {"schema", "as_of", "buyer", "criteria", "order", "excluded"} <= set(whole)
