from dataclasses import replace
from datetime import date

from command_line import SMALL
from small_answers import desk, names
from small_rides import demo
from spindlewise.answer.bench_session import NoSession, ProductSessions, product_sessions, ride_sessions
from spindlewise.catalog.session_row import SessionRow, read_sessions
from spindlewise.render.as_text import as_text
from spindlewise.render.words_session import (
    drift_sentences,
    history_blocks,
    record_sentence,
    session_sentences,
    sessions_table,
)

DUO = "tarnquell-liskar-duo"


def record(product: str = DUO, *more: SessionRow) -> ProductSessions:
    rows, _ = read_sessions(SMALL / "bench" / "sessions.csv", "sessions.csv")
    return product_sessions(product, [*rows, *more], desk().day)


def series(*points: tuple[float, float]) -> ProductSessions:
    rows = [
        SessionRow(date(2026, i + 1, 3), "some-pedal", 60.0, pct, 1.0, "counts", "serial 12", km)
        for i, (km, pct) in enumerate(points)
    ]
    return product_sessions("some-pedal", rows, date(2026, 11, 20))


def test_all_sessions_come_to_bias_and_spread() -> None:
    assert record_sentence(record(), names()) == (
        "Tarnquell Liskar Duo: 3 of 4 sessions count; together a bias of -1.1 % ± 0.6 % and a spread of "
        "1.3 % ± 0.2 %."
    )
    assert record_sentence(record("nothing-such"), names()) == (
        "nothing-such: 0 of 0 sessions count; with 3 more there will be an observation."
    )


def test_a_ride_gives_its_line_or_the_reason() -> None:
    (session,) = ride_sessions(demo())
    said = session_sentences((session, NoSession("some-hub", "a chain stands between")), (), names())
    assert said[0].endswith(
        "2025-10-18,osmeryd-avessin,39,0.4,0.3,counts,the pair bought from Tollhouse Spokes,410"
    )
    assert said[1] == "some-hub: no session, a chain stands between."
    with_record = session_sentences((session,), (record("osmeryd-avessin"),), names())
    assert len(with_record) == 2


def test_unit_and_distance_are_columns_where_any_session_notes_them() -> None:
    plain = sessions_table(record())
    assert [column.title for column in plain.columns] == [
        "Date",
        "Minutes",
        "Difference",
        "Spread",
        "Verdict",
    ]
    rows = series((0.0, 0.5), (900.0, 0.7)).rows
    mixed = product_sessions(
        "some-pedal", [*rows, replace(rows[0], unit="", ridden_km=None)], date(2026, 11, 20)
    )
    told = sessions_table(mixed)
    assert [column.title for column in told.columns][4:6] == ["Unit", "Ridden"]
    assert sorted(row[4:6] for row in told.rows) == [
        ("not noted", "not noted"),
        ("serial 12", "0 km"),
        ("serial 12", "900 km"),
    ]


def test_void_sessions_stay_listed() -> None:
    told = as_text(history_blocks(desk().catalog, record(), desk().day), 200)
    assert "void: no zero offset before the start" in told
    assert "What the bench has seen of the Tarnquell Liskar Duo" in told
    empty = as_text(history_blocks(desk().catalog, record("nothing-such"), desk().day))
    assert "There was no session by 2026-11-20." in empty


def test_a_unit_at_0_1000_and_9000_kilometres() -> None:
    drifting = series((0, 0.1), (100, 0.12), (1000, 0.25), (1100, 0.24), (9000, 1.2), (9100, 1.25))
    (by_km, by_time) = drift_sentences(drifting)
    assert by_km.startswith("Per 1,000 km the difference moves by +0.12 %")
    assert by_km.endswith("it drifts.")
    assert by_time.startswith("Per year")
    steady = series((0, 0.1), (100, 0.3), (1000, 0.1), (1100, 0.3), (9000, 0.2), (9100, 0.1))
    assert drift_sentences(steady)[0].endswith("no drift is proved.")
    assert "serial 12" in as_text(history_blocks(desk().catalog, steady, desk().day), 200)
    assert "9000 km" in as_text(history_blocks(desk().catalog, steady, desk().day), 200)


def test_too_short_a_series_cannot_tell() -> None:
    assert drift_sentences(series((0, 0.1), (100, 0.2))) == (
        "Whether the reading drifts cannot be told from these sessions.",
    )
