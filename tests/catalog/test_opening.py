import gc
import os
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest

from small_catalog import copied, opened, spoil, standing_in
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.checks import registry
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.product import Product
from spindlewise.catalog.reading import read_record
from spindlewise.problems import render

ROOT = Path(__file__).parents[2]


def test_the_demo_has_no_errors_and_warns_of_what_its_makers_keep_to_themselves() -> None:
    with standing_in(ROOT):
        catalog, problems = open_catalog(Path("catalog"))
    assert catalog is not None
    assert {p.rule for p in problems} <= {"weight-basis", "stack-basis"}
    assert {p.level for p in problems} <= {"warning"}
    assert len(catalog.products) >= 20


def test_all_of_a_catalog_is_there(tmp_path: Path) -> None:
    copied(tmp_path)
    catalog, problems = opened(tmp_path)
    assert problems == []
    assert catalog is not None
    assert [row.line for row in catalog.prices] == [2, 3, 4, 5, 6]
    assert len(catalog.rates.rows) == 2
    assert len(catalog.taxes.rows) == 2
    assert catalog.bench_files == {"bench/weighings.csv"}
    assert set(catalog.documents) == {"catalog.yaml", "criteria.yaml", *catalog.products}
    assert catalog.unread == frozenset()


def test_progress_sees_every_product_file_once(tmp_path: Path) -> None:
    copied(tmp_path)
    met: list[str] = []

    def tell(paths: Iterable[Path], total: int) -> Iterator[Path]:
        assert total == 3
        for path in paths:
            met.append(path.name)
            yield path

    with standing_in(tmp_path):
        assert open_catalog(Path("catalog"), tell)[1] == []
    assert met == ["skerry-duo.yaml", "skerry-solo.yaml", "slate-flat.yaml"]


def test_reading_leaves_the_garbage_collector_as_it_was(tmp_path: Path) -> None:
    copied(tmp_path)
    during: list[bool] = []

    def watch(paths: Iterable[Path], total: int) -> Iterator[Path]:
        for path in paths:
            during.append(gc.isenabled())
            yield path

    try:
        for on in (True, False):
            (gc.enable if on else gc.disable)()
            with standing_in(tmp_path):
                open_catalog(Path("catalog"), watch)
            assert gc.isenabled() is on
    finally:
        gc.enable()
    assert during == [False] * 6


def test_what_an_editor_keeps_beside_a_file_is_passed_over(tmp_path: Path) -> None:
    folder = copied(tmp_path) / "products"
    (folder / ".skerry-duo.yaml.swp").write_text("x")
    (folder / ".#skerry-duo.yaml").symlink_to("nobody@nowhere")
    assert opened(tmp_path)[1] == []


def test_a_pipe_among_the_products_is_told_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(copied(tmp_path) / "products" / "pipe.yaml")
    catalog, problems = opened(tmp_path)
    assert catalog is None
    assert [(p.rule, p.message) for p in problems] == [
        ("unreadable-file", "catalog/products/pipe.yaml: is not a regular file")
    ]


def test_a_forgiven_list_that_cannot_be_read_forgives_nothing(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    spoil(folder, ("products/skerry-duo.yaml", "span: axis to pedal top", "span: unknown"))
    (folder / "forgiven.yaml").write_text("schema: spindlewise forgiven 1\nforgiven: [\n", "utf-8")
    assert [p.rule for p in opened(tmp_path)[1]] == ["yaml-syntax", "stack-basis"]


def test_a_warning_leaves_the_catalog_whole_and_an_error_does_not(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    spoil(folder, ("products/skerry-duo.yaml", "span: axis to pedal top", "span: unknown"))
    catalog, problems = opened(tmp_path)
    assert catalog is not None
    assert [p.level for p in problems] == ["warning"]
    spoil(folder, ("products/skerry-duo.yaml", "value: 54", "value: 0"))
    catalog, problems = opened(tmp_path)
    assert catalog is None
    assert {p.level for p in problems} == {"warning", "error"}


def test_the_rules_wait_where_the_settings_cannot_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoil(copied(tmp_path), ("criteria.yaml", "currency: EUR", "currency: 5"))
    monkeypatch.setattr(registry, "CHECKS", (lambda _catalog: pytest.fail("a rule ran"),))
    assert [p.field for p in opened(tmp_path)[1]] == ["currency"]


def test_problems_stand_in_order_of_file_line_and_column_whatever_the_order_of_the_rules(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoil(
        copied(tmp_path),
        ("products/skerry-duo.yaml", "value: 54", "value: 0"),
        ("products/skerry-duo.yaml", 'firmware: "2.0"', "firmware: not applicable"),
        ("products/skerry-solo.yaml", "how: one side doubled", "how: both sides"),
        ("prices.csv", "slate-flat,EU", "slate-flat,ZZ"),
    )
    told = render(opened(tmp_path)[1], "plain")
    assert told.count("\n") == 4
    monkeypatch.setattr(registry, "CHECKS", tuple(reversed(registry.CHECKS)))
    assert render(opened(tmp_path)[1], "plain") == told


def test_a_record_is_read_alone(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    product, document, problems = read_record(Product, folder / "products" / "skerry-duo.yaml")
    assert problems == []
    assert product is not None
    assert document is not None
    assert document.place(("id",)).line == 2
    assert read_record(Buyer, folder / "buyers" / "nobody.yaml")[:2] == (None, None)
    wrong, document, problems = read_record(Buyer, folder / "products" / "skerry-duo.yaml")
    assert wrong is None
    assert document is not None
    assert problems


JUMP = "2026-04-12,skerry-duo,EU,EUR,84.90,in,street,Quay Wheels,,product page\n"


def test_a_question_is_spared_warnings_that_take_long_to_find_unless_something_is_wrong(
    tmp_path: Path,
) -> None:
    folder = copied(tmp_path)
    with (folder / "prices.csv").open("a", encoding="utf-8") as log:
        log.write(JUMP)
    told = [problem.rule for problem in open_catalog(folder)[1]]
    assert told == ["price-jump"]
    catalog, problems = open_catalog(folder, warnings=False)
    assert catalog is not None
    assert problems == []
    with (folder / "prices.csv").open("a", encoding="utf-8") as log:
        log.write(JUMP.replace("skerry-duo", "skery-duo"))
    assert open_catalog(folder, warnings=False) == open_catalog(folder)
    assert [problem.rule for problem in open_catalog(folder)[1]] == ["price-jump", "unknown-product"]


def test_where_warnings_are_forgiven_a_question_is_spared_none(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    with (folder / "prices.csv").open("a", encoding="utf-8") as log:
        log.write(JUMP)
    (folder / "forgiven.yaml").write_text(
        "schema: spindlewise forgiven 1\nforgiven:\n"
        "  - {rule: price-jump, file: prices.csv, reason: a clearance of the last pair}\n",
        "utf-8",
    )
    assert open_catalog(folder, warnings=False)[1] == open_catalog(folder)[1] == []
