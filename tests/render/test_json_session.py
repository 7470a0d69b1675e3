import json

import worlds
from render.test_words_session import record, series
from small_rides import demo
from spindlewise.answer.bench_session import NoSession, ride_sessions
from spindlewise.render.as_json import as_json
from spindlewise.render.json_session import HISTORY_SCHEMA, history_json, sessions_json


def test_a_history_has_all_sessions_and_what_they_come_to() -> None:
    found = json.loads(as_json(HISTORY_SCHEMA, history_json(record(), worlds.DAY)))
    assert (len(found["sessions"]), found["counted"], found["missing"]) == (4, 3, 0)
    assert found["bias_pct"]["value"] < 0 < found["spread_pct"]["value"]
    assert found["change_per_1000_km_pct"] is None


def test_drift_says_whether_it_is_proved() -> None:
    points = ((0, 0.1), (100, 0.12), (1000, 0.25), (1100, 0.24), (9000, 1.2), (9100, 1.25))
    found = history_json(series(*points), worlds.DAY)
    assert found["change_per_1000_km_pct"]["proved"] is True  # type: ignore[index,call-overload]
    few = history_json(series(*points[:2]), worlds.DAY)
    assert (few["bias_pct"], few["missing"]) == (None, 1)


def test_a_rides_sessions_and_why_there_is_none() -> None:
    (session,) = ride_sessions(demo())
    with_all, none = sessions_json((session, NoSession("hub-one", "because")), (record("osmeryd-avessin"),))
    assert with_all["all_sessions"]["counted"] >= 0  # type: ignore[index,call-overload]
    assert with_all["recordings"][0]["sha256"]  # type: ignore[index,call-overload]
    assert none == {"product": "hub-one", "session": None, "because": "because"}
