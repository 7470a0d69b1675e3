from collections import Counter

import pytest

from spindlewise.answer.worked_out import WorkedOut


def test_each_value_is_worked_out_once_and_only_where_it_is_asked_for() -> None:
    asked: Counter[str] = Counter()

    def work(name: str) -> str:
        asked[name] += 1
        return name.upper()

    found = WorkedOut(("heron", "siskin", "wren"), work)
    assert len(found) == 3
    assert list(found) == ["heron", "siskin", "wren"]
    assert "wren" in found
    assert "dunlin" not in found
    assert not asked
    assert (found["siskin"], found["siskin"], found.get("heron")) == ("SISKIN", "SISKIN", "HERON")
    assert asked == {"siskin": 1, "heron": 1}
    assert {**found} == {"heron": "HERON", "siskin": "SISKIN", "wren": "WREN"}
    assert set(asked.values()) == {1}


def test_what_is_no_key_is_not_worked_out() -> None:
    found = WorkedOut(("heron",), str.upper)
    with pytest.raises(KeyError):
        found["dunlin"]
    assert found.get("dunlin") is None


def test_nothing_is_a_value_too() -> None:
    asked: list[int] = []
    found = WorkedOut((1,), asked.append)
    assert found[1] is found[1] is None
    assert asked == [1]
