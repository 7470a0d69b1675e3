from datetime import date
from pathlib import Path

from small_catalog import copied, opened
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_price, at_value, first_days, observed, side_prices
from spindlewise.problems import Place
from worlds import catalog, plain, price, product


def _good(tmp_path: Path) -> Catalog:
    copied(tmp_path)
    found = opened(tmp_path)[0]
    assert found is not None
    return found


def test_a_finding_stands_at_its_value_and_names_the_field(tmp_path: Path) -> None:
    found = at_value(_good(tmp_path), "skerry-duo", ("cleat", "pattern"), "a-rule", "is odd", "write Keel")
    assert found.place == Place("catalog/products/skerry-duo.yaml", 11, 37)
    assert (found.level, found.rule, found.field) == ("error", "a-rule", "cleat.pattern")
    assert (found.message, found.tip) == ("cleat.pattern: is odd", "write Keel")


def test_a_finding_about_what_is_left_out_stands_at_what_surrounds_it(tmp_path: Path) -> None:
    found = at_value(_good(tmp_path), "criteria.yaml", ("criteria", "detail", "steps", "gone"), "r", "m", "t")
    assert found.place == Place("catalog/criteria.yaml", 57, 7)


def test_a_catalog_that_was_not_read_from_files_has_findings_without_a_place() -> None:
    made = catalog([product("moor-peak")], [])
    assert at_value(made, "moor-peak", ("name",), "r", "m", "t").place is None


def test_a_finding_in_the_price_log_counts_quotes(tmp_path: Path) -> None:
    good = _good(tmp_path)
    row = good.prices[-1]
    text = (tmp_path / "catalog" / "prices.csv").read_text("utf-8").splitlines()[row.line - 1]
    for column, begins in (
        ("date", "2026-10-01"),
        ("seller", '"Quay, Wheels"'),
        ("source", '"a ""harvest""'),
    ):
        found = at_price(good, row, column, "r", "m", "t", "warning")
        assert found.place is not None
        assert (found.place.file, found.place.line) == ("catalog/prices.csv", 6)
        assert text[found.place.column - 1 :].startswith(begins)
        assert (found.level, found.field, found.message) == ("warning", column, f"{column}: m")


def test_all_that_was_observed_in_the_order_of_the_keys(tmp_path: Path) -> None:
    known = _good(tmp_path)
    assert [(attribute, index) for attribute, index, _ in observed(known.products["skerry-duo"])][:3] == [
        ("weight_g", 0),
        ("weight_g", 1),
        ("stack_mm", 0),
    ]
    assert list(observed(known.products["skerry-solo"])) == []


def test_side_prices_of_cells_and_upkeep(tmp_path: Path) -> None:
    good = _good(tmp_path)
    assert [path for path, _ in side_prices(good.products["skerry-duo"])] == [
        ("battery", "spare_prices", 0),
        ("service", "prices", 0),
    ]
    battery = {"type": "AAA", "count": 2, "cell_weight_g": 11.5, "spare_prices": "unknown"}
    made = product("moor-peak", battery=battery, service={"what": "seals", "prices": "unknown"})
    assert list(side_prices(made)) == list(side_prices(plain("moor-flat"))) == []


def test_the_first_row_of_each_region_and_currency() -> None:
    rows = [
        price("a", 1, line=2, date=date(2026, 3, 1)),
        price("b", 2, line=3, date=date(2026, 2, 1)),
        price("c", 3, line=4, date=date(2026, 2, 1)),
        price("a", 4, line=5, currency="GBP"),
        price("a", 5, line=6, region="US", currency="USD"),
    ]
    found = first_days(catalog([], rows))
    assert {key: row.line for key, row in found.items()} == {
        ("EU", "EUR"): 3,
        ("EU", "GBP"): 5,
        ("US", "USD"): 6,
    }
