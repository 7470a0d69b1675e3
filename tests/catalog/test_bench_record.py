import pytest
from pydantic import ValidationError

from spindlewise.catalog.bench_record import BenchFigures, BenchRecord
from spindlewise.catalog.observation import Observations


def data(**more):
    return {
        "schema": "spindlewise observations 1",
        "product": "heron",
        "observations": {},
    } | more


def test_a_bench_says_only_what_a_product_s_file_may_say():
    assert set(BenchFigures.model_fields) < set(Observations.model_fields)
    assert {"weight_g", "running_hours", "reading_bias_pct", "reading_spread_pct"} <= set(
        BenchFigures.model_fields
    )


def test_what_a_maker_claims_has_no_place_here():
    with pytest.raises(ValidationError, match="warranty_years"):
        BenchRecord.model_validate(data(observations={"warranty_years": ()}))


def test_a_recording_is_named_with_its_digest():
    raw = {"file": "bench/rides/a/hub.csv", "sha256": "0" * 64}
    assert BenchRecord.model_validate(data(recordings=(raw,))).recordings[0].file == raw["file"]
    with pytest.raises(ValidationError, match="sha256"):
        BenchRecord.model_validate(data(recordings=(raw | {"sha256": "abc"},)))
