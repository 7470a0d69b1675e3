from spindlewise.catalog.document import MISREAD, Document, dotted
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.problems import Place

TEXT = "id: a\nweight_g:\n  - value: 310\n    basis: {count: pair}\n  - value: no\n"


def _document() -> Document:
    document, _ = read_yaml_text(TEXT, "a.yaml")
    assert document is not None
    return document


def test_values_and_keys_know_their_places() -> None:
    document = _document()
    assert document.places["weight_g", 0, "value"] == Place("a.yaml", 3, 12)
    assert document.key_places["weight_g", 0, "value"] == Place("a.yaml", 3, 5)
    assert document.places["weight_g", 0] == Place("a.yaml", 3, 5)
    assert document.places["weight_g", 0, "basis"] == Place("a.yaml", 4, 12)
    assert document.places["weight_g", 0, "basis", "count"] == Place("a.yaml", 4, 20)
    assert document.places[()] == Place("a.yaml", 1, 1)
    assert len(document.places) == len(list(document.places)) == 9
    assert ("weight_g", 0, "value") in document.key_places


def test_a_path_that_is_not_there_gives_the_innermost_place() -> None:
    document = _document()
    assert document.place(("weight_g", 0, "basis", "cleats")) == Place("a.yaml", 4, 12)
    assert document.place(("nothing", "at", "all")) == Place("a.yaml", 1, 1)
    assert document.key_place(("weight_g", 1)) == Place("a.yaml", 5, 5)
    assert document.key_place(("id",)) == Place("a.yaml", 1, 1)
    assert Document("b.yaml", MISREAD, {}, {}, "").place(("x",)) == Place("b.yaml", 1, 1)


def test_the_head_of_a_mapping_is_its_first_key() -> None:
    document = _document()
    assert document.head_place(("weight_g", 0, "basis")) == Place("a.yaml", 4, 13)
    assert document.head_place(("weight_g",)) == Place("a.yaml", 3, 3)
    assert document.head_place(()) == Place("a.yaml", 1, 1)


def test_values_by_path() -> None:
    document = _document()
    assert document.value(("weight_g", 0, "value")) == 310
    assert document.value(()) is document.data
    for nowhere in [("id", "x"), ("weight_g", 2), ("weight_g", "value"), ("x",), ("weight_g", 1, "value")]:
        assert document.value(nowhere) is MISREAD


def test_dotted_paths_are_safe_to_print() -> None:
    assert dotted(()) == ""
    assert dotted(("a", 0, "b")) == "a[0].b"
    assert dotted((0, "\x1b")) == "[0].\\x1b"
    assert len(dotted(("x" * 9999,))) == 60
    assert repr(MISREAD) == "MISREAD"


def test_data_that_is_not_kept_is_read_again_from_the_text() -> None:
    text = "a: {b: 2026-11-20, c: [1, x]}\n"
    document, problems = read_yaml_text(text, "a.yaml")
    assert document is not None
    assert problems == []
    lean = document.without_data()
    assert lean.data is MISREAD
    assert lean.content() == document.content() == document.data
    assert lean.value(("a", "c", 1)) == "x"
    assert lean.head_place(("a",)) == document.head_place(("a",)) == Place("a.yaml", 1, 5)
    assert lean.places == document.places


def test_data_that_could_not_be_read_swiftly_is_kept() -> None:
    document, _ = read_yaml_text("a: 1\nb: NO\n", "a.yaml")
    assert document is not None
    assert document.without_data() is document
    assert document.content() == {"a": 1, "b": MISREAD}
