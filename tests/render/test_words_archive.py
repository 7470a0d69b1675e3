import json

from small_answers import desk
from small_rides import FIRST, demo
from spindlewise.answer.bench_archive import ride_line
from spindlewise.answer.bench_session import RideSession, product_sessions
from spindlewise.render.as_json import as_json
from spindlewise.render.as_text import as_text
from spindlewise.render.words_archive import SCHEMA, archive_blocks, archive_json

LINES = (ride_line(demo(FIRST)), ride_line(demo()))


def records():
    rows = [s.row for line in LINES for s in line.sessions if isinstance(s, RideSession)]
    return tuple(product_sessions(row.product, rows, desk().day) for row in rows)


def test_a_line_a_pair_and_void_rides_too() -> None:
    told = as_text(archive_blocks(desk().catalog, LINES, records()), 200)
    for words in (
        "2025-10-18  2025-10-18-three-meters  pedals, hub",
        "void",
        "2025-09-13-first-ride counts for nothing",
        "1 of 1 sessions count; with 2 more",
        "another unit of a product may differ",
    ):
        assert words in told, words


def test_an_archive_without_products_or_with_files_missing() -> None:
    from dataclasses import replace

    bare = (replace(LINES[1], sessions=(), unread=("hub",)),)
    told = as_text(archive_blocks(desk().catalog, bare, ()), 200)
    assert "No ride gives a session of a product." in told
    assert "2025-10-18-three-meters: not read: hub." in told


def test_json_has_every_ride_and_product() -> None:
    found = json.loads(as_json(SCHEMA, archive_json(LINES, records())))
    assert [ride["counts"] for ride in found["rides"]] == [False, True]
    assert found["rides"][1]["pairs"][0]["difference_pct"]["value"] > 0
    assert [product["missing"] for product in found["products"]] == [3, 2]
