from pathlib import Path

from small_catalog import GOOD
from spindlewise.catalog.product import Product
from spindlewise.catalog.reading import read_record


def test_a_file_as_a_record_with_its_document() -> None:
    path = GOOD / "products" / "skerry-duo.yaml"
    product, document, problems = read_record(Product, path)
    assert product is not None
    assert document is not None
    assert (product.id, document.value(("id",)), problems) == ("skerry-duo", "skerry-duo", [])
    assert document.name == path.as_posix()


def test_problems_of_reading_and_of_validating_are_told_together(tmp_path: Path) -> None:
    text = (GOOD / "products" / "skerry-duo.yaml").read_text("utf-8")
    path = tmp_path / "skerry-duo.yaml"
    path.write_text(
        text.replace("sides: both", "sides: NO").replace("kind: power pedal", "kind: pedal"), "utf-8"
    )
    product, document, problems = read_record(Product, path)
    assert product is None
    assert document is not None
    assert [problem.rule for problem in problems] == ["ambiguous-word", "unlisted-word"]


def test_what_cannot_be_read_has_no_document(tmp_path: Path) -> None:
    product, document, problems = read_record(Product, tmp_path / "nothing.yaml")
    assert (product, document) == (None, None)
    assert [problem.rule for problem in problems] == ["unreadable-file"]
