"""A snippet is read by the strict reader, entry for entry, as the catalog's own observations."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter

from spindlewise.answer.bench_observation import BenchObservation
from spindlewise.catalog.observation import Figures, SignedFigures, Weights
from spindlewise.catalog.yaml_text import read_yaml_text
from spindlewise.render.yaml_snippet import figure, scalar, snippet_yaml

WEIGHT = BenchObservation(
    "some-pedal",
    "weight_g",
    date(2026, 3, 12),
    "bench/weighings.csv, 2026-03-12",
    "5 readings; SHA-256 of their lines 00",
    404.0,
    1.0,
    {"count": "pair", "batteries": "in", "cleats": "off"},
)
BIAS = BenchObservation("some-pedal", "reading_bias_pct", date(2026, 4, 2), "bench", "", -0.8, 0.2, {})
MODELS: dict[str, Any] = {
    "weight_g": Weights,
    "reading_bias_pct": SignedFigures,
    "reading_spread_pct": Figures,
}


def read(text: str) -> dict[str, dict[str, Any]]:
    document, problems = read_yaml_text(text, "snippet.yaml")
    assert problems == []
    assert document is not None
    data: Any = document.data
    return {
        product: {name: TypeAdapter(MODELS[name]).validate_python(entries) for name, entries in found.items()}
        for product, found in data.items()
    }


def test_a_snippet_is_what_the_catalog_takes() -> None:
    text = snippet_yaml([WEIGHT, BIAS, WEIGHT])
    found = read(text)["some-pedal"]
    assert [entry.value for entry in found["weight_g"]] == [404, 404]
    assert found["weight_g"][0].basis.cleats == "off"
    (bias,) = found["reading_bias_pct"]
    assert (bias.value, bias.plus_minus, bias.grade, bias.note) == (-0.8, 0.2, "measured", None)
    assert '      basis: {count: pair, batteries: in, cleats: "off"}\n' in text
    assert text.startswith("# Add each entry")


def test_of_nothing_there_is_no_snippet() -> None:
    assert snippet_yaml([]) == ""


@pytest.mark.parametrize(
    ("value", "text"), [(404.0, "404"), (-0.8, "-0.8"), (0.1, "0.1"), (-0.0, "0"), (12345.6, "12345.6")]
)
def test_figures_are_written_as_an_author_would(value: float, text: str) -> None:
    assert figure(value) == text


@settings(deadline=None)
@given(st.text(st.characters(exclude_categories=["Cc", "Cf", "Cs", "Zl", "Zp", "Co", "Cn"]), min_size=1))
def test_any_visible_text_comes_back_as_it_was(text: str) -> None:
    if not text.isprintable():
        return
    lines = f"a: {scalar(text)}\nb: {{c: {scalar(text, in_flow=True)}}}\n"
    document, problems = read_yaml_text(lines, "x.yaml")
    assert problems == []
    assert document is not None
    assert document.data == {"a": text, "b": {"c": text}}


def test_a_file_of_the_bench_names_its_recordings_once_and_is_read_as_it_is_written(tmp_path):
    from spindlewise.catalog.bench_record import BenchRecord
    from spindlewise.catalog.opening import read_record
    from spindlewise.render.yaml_snippet import record_yaml

    raw = (("bench/rides/a/pedals.csv", "12" * 32), ("bench/rides/a/spider.csv", "ab" * 32))
    found = [
        BenchObservation("heron", f"reading_{what}_pct", date(2026, 3, 12), "bench", "", value, 0.2, {}, raw)
        for what, value in (("bias", -0.8), ("spread", 1.1))
    ]
    path = tmp_path / "heron-reading-2026-03-12.yaml"
    path.write_text(record_yaml("heron", found), "utf-8")
    record, _, problems = read_record(BenchRecord, path)
    assert problems == []
    assert record.product == "heron"
    assert [(each.file, each.sha256) for each in record.recordings] == list(raw)
    assert record.observations.reading_bias_pct[0].value == -0.8
    assert record.observations.reading_spread_pct[0].grade == "measured"
    assert "recordings" not in record_yaml("heron", [replace(found[0], recordings=())])
