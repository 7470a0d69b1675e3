from datetime import date

import worlds
from spindlewise.site.change_events import events

SINCE = date(2026, 8, 1)
D = date(2026, 9, 5)


def told(products, rows, day=worlds.DAY, since=SINCE):
    return [(e.day, e.kind, e.said) for e in events(worlds.catalog(products, rows), since, day)]


def test_prices_that_fall_rise_begin_and_run_out():
    def seen(amount, when, **more):
        return worlds.price("heron", amount, date=when, line=when.toordinal(), **more)

    offer = {"kind": "offer", "seller": "Shop"}
    rows = [
        seen(500, date(2026, 7, 1)),
        seen(450, date(2026, 9, 1)),
        seen(450, date(2026, 9, 3)),
        seen(460, date(2026, 9, 5)),
        seen(399, date(2026, 9, 7), valid_until=date(2026, 9, 10), **offer),
        seen(399, date(2026, 9, 20), valid_until=date(2026, 9, 22), **offer),
    ]
    where = "street, Quayside Wheels, Union"
    shop = "offer, Shop, Union"
    assert told([worlds.product("heron")], rows) == [
        (date(2026, 9, 23), "price ran out", "EUR 399.00 no longer holds, offer, Shop, Union"),
        (date(2026, 9, 20), "seen again", f"EUR 399.00, {shop}"),
        (date(2026, 9, 11), "price ran out", "EUR 399.00 no longer holds, offer, Shop, Union"),
        (date(2026, 9, 7), "first price", f"EUR 399.00, {shop}"),
        (
            date(2026, 9, 5),
            "price rise",
            f"EUR 460.00, {where}: EUR 10.00 more (2.2 %) than seen on 2026-09-03",
        ),
        (
            date(2026, 9, 1),
            "price fall",
            f"EUR 450.00, {where}: EUR 50.00 less (10.0 %) than seen on 2026-07-01",
        ),
    ]


def test_an_offer_that_goes_on_without_a_gap_has_not_run_out():
    rows = [
        worlds.price(
            "heron", 399, date=date(2026, 9, 1), valid_until=date(2026, 9, 10), kind="offer", line=2
        ),
        worlds.price(
            "heron", 399, date=date(2026, 9, 11), valid_until=date(2026, 12, 1), kind="offer", line=3
        ),
    ]
    assert [kind for _, kind, _ in told([worlds.product("heron")], rows)] == ["first price"]


def test_a_figure_that_replaces_one_of_its_kind_is_a_correction():
    weights = (worlds.weighed(330), worlds.weighed(331, date=D, source="bench"), worlds.weighed(331, date=D))
    stacks = (worlds.stack(11.0, grade="claimed", date=D),)
    found = told([worlds.product("heron", {"weight_g": weights, "stack_mm": stacks})], [])
    assert found == [
        (
            D,
            "correction",
            "Weight, measured, pair, batteries in, cleats off: 331 g ± 1 g, before 330 g ± 1 g of 2026-01-10 "
            "(bench)",
        ),
        (D, "new figure", "Stack height, claimed, axis to pedal top: 11.0 mm ± 0.2 mm (bench/weighings.csv)"),
    ]


def test_firmware_notices_reports_and_the_range():
    link = {
        "protocol": "Bluetooth",
        "carries": (
            {"what": "power", "how": "both sides", **worlds.START},
            {"what": "balance", "how": "carried", "since": D, "firmware": "2.1", "source": "notes"},
            {
                "what": "stroke metrics",
                "how": "carried",
                "since": "promised",
                "firmware": "3",
                "source": "talk",
            },
        ),
    }
    notice = {
        "date": D,
        "ended": date(2026, 10, 1),
        "what": "It cracks.",
        "action": "Stop.",
        "issued_by": "maker",
    }
    report = {
        "date": D, "what": "Play.", "count": 2, "of_units": "unknown", "grade": "reported", "status": "open",
        "source": "letters",
    }  # fmt: skip
    statuses = (
        {"state": "current", "since": date(2025, 1, 1), "source": "maker"},
        {"state": "clearance", "since": D, "source": "shop"},
    )
    product = worlds.product(
        "heron", links=(link,), safety_notices=(notice,), reliability=(report,), statuses=statuses
    )
    assert told([product], []) == [
        (date(2026, 10, 1), "notice lifted", "It cracks."),
        (D, "safety notice", "It cracks. Stop."),
        (D, "firmware", "balance over Bluetooth: carried, with firmware 2.1 (notes)"),
        (D, "trouble reported", "Play. 2 of an unknown number of units, reported, open (letters)"),
        (D, "in the range", "clearance, shop"),
    ]


def test_rates_belong_to_no_product_and_later_days_are_not_seen():
    products, rows = [worlds.product("heron")], [worlds.price("heron", 500, date=date(2026, 12, 24))]
    assert told(products, rows) == []
    found = events(worlds.catalog(products, rows), date(2025, 12, 31), date(2026, 1, 1))
    assert {(e.kind, e.product) for e in found} == {("rate", "")}
    assert "one EUR is 1.10 USD" in {e.said for e in found}
