from datetime import date, timedelta
from pathlib import Path

import pytest

import worlds
from spindlewise.answer.asking import open_buyers
from spindlewise.answer.desk import Desk
from spindlewise.answer.merits import Yardstick
from spindlewise.answer.received import receive_all
from spindlewise.answer.receptions import Receptions
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.product_days import product_days

DEMO = Path(__file__).parents[2] / "catalog"


def told(received):
    """All that is told of a product on a receiver."""
    known = (received.budget, received.standings, received.merits, received.reading_known)
    return (received.receptions, received.assumed, *known)


@pytest.mark.parametrize("with_promised", [False, True])
def test_on_every_day_on_which_anything_changes_the_demo_is_received_as_if_worked_out_anew(
    with_promised,
):
    """On each date of a record, and on its eve and morrow, for each demo buyer."""
    catalog, _ = open_catalog(DEMO)
    buyers, _ = open_buyers(DEMO / "buyers", catalog)
    yardstick = Yardstick(catalog.criteria)
    dates = {day for product in catalog.products.values() for day in product_days(product)}
    days = sorted({day + timedelta(by) for day in dates for by in (-1, 0, 1)})
    shared = Receptions()
    kept = 0
    for buyer in buyers.values():
        before = {}
        for day in days[::5]:
            found = shared.all(catalog, yardstick, buyer, day, with_promised)
            anew = receive_all(catalog, yardstick, buyer, day, with_promised)
            assert {n: told(r) for n, r in found.items()} == {n: told(r) for n, r in anew.items()}, (
                buyer.id,
                day,
            )
            kept += sum(found[name] is before.get(name) for name in found)
            before = found
    assert kept > 100


def test_desks_of_several_days_share_what_has_not_changed():
    product = worlds.product("heron")
    catalog = worlds.catalog([product], [worlds.price("heron", 500)])
    shared, buyer = Receptions(), worlds.buyer()
    one, two = (Desk(catalog, worlds.DAY + timedelta(days), receptions=shared) for days in (0, 1))
    assert one.received(buyer)["heron"] is two.received(buyer)["heron"]
    early = Desk(catalog, date(2020, 1, 1), receptions=shared)
    assert early.received(buyer)["heron"] is not one.received(buyer)["heron"]
    other = worlds.buyer(riding={"balance_left_pct": {"low": 44, "high": 50}})
    assert one.received(other)["heron"] is not one.received(buyer)["heron"]
