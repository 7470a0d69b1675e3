"""Reading modes as tables: every receiver that a buyer can state finds its own row and place."""

from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from spindlewise.answer.received import links_now
from spindlewise.reception.reading_mode import ReceiverNow, receive
from spindlewise.site.export_reception import ABLE, FREE, HEARD, receivers, reception_tables

POWERS = ("both sides", "two channels", "one side doubled", "none", "unknown")
CARRIES = ("carried", "absent", "unknown")
SETS = [
    (worlds.link("ANT+", power, carried, metrics), worlds.link("Bluetooth", other, metrics, carried))
    for power in POWERS
    for other in POWERS
    for carried in CARRIES
    for metrics in ("carried", "unknown")
]
LINKED = [worlds.product(f"heron-{k:03}", links=links) for k, links in enumerate(SETS)]
ALL = [
    *LINKED,
    worlds.product("mute", links="none"),
    worlds.product("riddle", links="unknown"),
    worlds.plain("slab"),
]
DESK = worlds.desk(ALL, [])
TABLES = reception_tables(DESK.catalog, DESK.yardstick, DESK.day)

any_receiver = st.builds(
    ReceiverNow,
    st.just("r"),
    st.sampled_from(HEARD).map(tuple),
    st.one_of(st.integers(0, 64), st.sampled_from(("unlimited", "unknown"))),
    *(st.sampled_from(ABLE) for _ in range(3)),
)


def place(receiver):
    """As the page's script finds it."""
    free = receiver.free_channels
    kind = "unlimited" if isinstance(free, int) and free > 1 else free
    found = HEARD.index(receiver.protocols) * len(FREE) + FREE.index(kind)
    for able in (receiver.pairs_two_sensors, receiver.shows_balance, receiver.shows_stroke_metrics):
        found = found * len(ABLE) + ABLE.index(able)
    return found


@given(st.sampled_from(ALL), any_receiver)
@settings(deadline=None, max_examples=400)
def test_the_table_says_what_the_rules_say(product, receiver):
    wanted = receive(links_now(product, DESK.day), receiver)
    told = TABLES.outcomes[TABLES.rows[TABLES.row_of[product.id]][place(receiver)]]
    assert (told["mode"], told["protocol"], told["balance"], told["stroke_metrics"]) == (
        wanted.mode,
        wanted.protocol,
        wanted.balance,
        wanted.stroke_metrics,
    )
    assert told["because"] == list(wanted.because)


def test_a_row_has_a_place_for_each_kind_of_receiver():
    assert {len(row) for row in TABLES.rows} == {len(receivers())} == {324}
    assert [place(receiver) for receiver in receivers()] == list(range(324))


def test_products_of_like_links_share_a_row_and_outcomes_stand_once():
    twins = worlds.desk([worlds.product("auk"), worlds.product("brant")], [])
    tables = reception_tables(twins.catalog, twins.yardstick, twins.day)
    assert len(tables.rows) == 1
    assert len({repr(o) for o in TABLES.outcomes}) == len(TABLES.outcomes)
    used = {index for row in TABLES.rows for index in row}
    assert used == set(range(len(TABLES.outcomes)))
