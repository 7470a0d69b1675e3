"""The desk keeps what it has worked out and reads the catalog on one day."""

from datetime import date

import pytest

import worlds
from spindlewise.answer.desk import Desk


def test_the_catalogs_own_day_counts_unless_another_is_named():
    catalog = worlds.catalog([], [])

    assert Desk(catalog).day == worlds.DAY
    assert Desk(catalog, date(2026, 1, 1)).day == date(2026, 1, 1)


def test_a_catalog_without_a_day_of_its_own_needs_one():
    catalog = worlds.catalog([], [])
    unpinned = catalog.settings.model_copy(update={"as_of": "today"})
    loose = type(catalog)(
        catalog.folder, unpinned, catalog.criteria, {}, (), catalog.rates, catalog.taxes, {}
    )

    with pytest.raises(ValueError, match="pins no day of its own"):
        Desk(loose)


def test_markets_and_receptions_are_worked_out_once_for_all_who_are_alike_in_them():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])

    assert desk.market("EU", "EUR") is desk.market("EU", "EUR")
    assert desk.received(worlds.buyer(budget=500)) is desk.received(worlds.buyer(budget=900))
    assert desk.ownership(worlds.buyer(budget=500)) is desk.ownership(worlds.buyer(budget=900))


def test_what_was_not_asked_for_lately_is_forgotten(monkeypatch):
    monkeypatch.setattr("spindlewise.answer.desk.MOST_KEPT", 2)
    desk = worlds.desk([], [])
    for name in ("a", "b"):
        desk.kept(name, lambda name=name: name.upper())
    desk.kept("a", lambda: "again")
    desk.kept("c", lambda: "C")

    assert [desk.kept(name, lambda: "new") for name in ("a", "c", "b")] == ["A", "C", "new"]


def test_a_number_stands_for_the_same_parts_only_even_after_some_were_forgotten(monkeypatch):
    monkeypatch.setattr("spindlewise.answer.desk.MOST_KEPT", 2)
    desk = worlds.desk([], [])
    given = [desk.number("kind", part) for part in ("a", "b", "a", "c", "a")]

    assert given[0] == given[2]
    assert len({given[0], given[1], given[3], given[4]}) == 4
    assert desk.number("other kind", "a") not in given
