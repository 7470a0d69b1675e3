from datetime import date

import worlds
from spindlewise.site.link_rows import link_rows


def said(how, since, what="power"):
    return {"what": what, "how": how, "since": since, "firmware": "unknown", "source": "letter"}


def kinds(*statements):
    product = worlds.product("heron", links=({"protocol": "Bluetooth", "carries": statements},))
    (rows,) = link_rows(product, worlds.DAY)
    return [(row.how, row.kind) for row in rows.said], rows.state


def test_the_newest_statement_holds_and_a_promise_counts_as_absent():
    found, state = kinds(
        said("one side doubled", date(2025, 1, 1)),
        said("two channels", date(2026, 1, 1)),
        said("both sides", "promised"),
    )
    assert found == [("one side doubled", "replaced"), ("two channels", "holds"), ("both sides", "promised")]
    assert state.power == "two channels"


def test_what_begins_after_the_day_is_not_there():
    found, state = kinds(said("one side doubled", date(2025, 1, 1)), said("both sides", date(2027, 1, 1)))
    assert found == [("one side doubled", "holds")]
    assert state.power == "one side doubled"


def test_of_two_on_one_day_the_later_written_holds_as_in_the_state():
    found, state = kinds(said("two channels", date(2025, 1, 1)), said("both sides", date(2025, 1, 1)))
    assert found == [("two channels", "replaced"), ("both sides", "holds")]
    assert state.power == "both sides"


def test_order_in_the_file_does_not_matter():
    found, _ = kinds(said("two channels", date(2026, 1, 1)), said("one side doubled", date(2025, 1, 1)))
    assert found == [("two channels", "holds"), ("one side doubled", "replaced")]


def test_a_plain_pedal_has_none():
    assert link_rows(worlds.plain("stone"), worlds.DAY) == ()
