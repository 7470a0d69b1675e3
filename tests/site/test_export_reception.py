"""Reading modes for every kind of receiver, worked out here so that the script need not know the rules."""

import itertools

import worlds
from spindlewise.answer.received import links_now
from spindlewise.reception.reading_mode import receive
from spindlewise.site.export_reception import receivers, reception_tables

WAYS = ("both sides", "two channels", "one side doubled", "none")


def test_every_outcome_is_that_of_the_rules():
    products = [
        worlds.product(f"p{i}", links=(worlds.link("ANT+", ant), worlds.link("Bluetooth", blue, "absent")))
        for i, (ant, blue) in enumerate(itertools.product(WAYS, WAYS))
    ]
    desk = worlds.desk(products, [])
    tables = reception_tables(desk.catalog, desk.yardstick, desk.day)
    for product in products:
        row = tables.rows[tables.row_of[product.id]]
        assert len(row) == len(receivers())
        for index, receiver in zip(row, receivers(), strict=True):
            found = receive(links_now(product, desk.day), receiver)
            outcome = tables.outcomes[index]
            assert (outcome["mode"], outcome["protocol"], outcome["balance"]) == (
                found.mode,
                found.protocol,
                found.balance,
            )


def test_products_that_send_alike_share_a_row():
    desk = worlds.desk([worlds.product("heron"), worlds.product("siskin")], [])
    tables = reception_tables(desk.catalog, desk.yardstick, desk.day)

    assert tables.row_of["heron"] == tables.row_of["siskin"]
    assert len(tables.rows) == 1
