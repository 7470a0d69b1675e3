"""A whole sheet of a ride as plain data, for tests to change."""

from datetime import date
from typing import Any


def meter_data(name: str = "pedals", **more: Any) -> dict[str, Any]:
    return {
        "id": name,
        "what": "pedals",
        "product": "some-pedal",
        "side": "both",
        "unit": "serial 12",
        "ridden_km": 0,
        "firmware": "1.0",
        "battery": "full",
        "zero_offset": {"done": "before the start", "left": -1, "right": 2},
        "crank_set_mm": 172.5,
        "fitted_nm": 40,
        "tolerance_pct": 1.0,
        "recorder": "head unit A",
        "recording": {
            "format": "CSV",
            "file": f"{name}.csv",
            "sha256": "unknown",
            "columns": {"time": {"column": "s", "written_as": "seconds"}, "power": "w"},
        },
    } | more


def sheet_data(*meters: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {
        "schema": "spindlewise ride 1",
        "id": "a-ride",
        "title": "A ride",
        "date": date(2025, 10, 18),
        "rider": "the bench",
        "made": "generated",
        "note": "for tests",
        "standing": {"state": "counts", "because": "not applicable"},
        "temperature_start_c": 9,
        "temperature_end_c": 12.0,
        "crank_mm": 172.5,
        "percent_of": "pedals",
        "meters": meters or (meter_data(),),
    } | more
