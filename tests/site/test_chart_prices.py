import os
import subprocess
import sys
from datetime import date
from itertools import pairwise

import vl_convert

import worlds
from drawn_pictures import in_order, marks, rows_with, texts
from spindlewise.site.chart_prices import History, offers, price_chart, price_drawing, price_picture
from spindlewise.site.draughtsman import svg_of

DAY = worlds.DAY
ROWS = [
    worlds.price("heron", 500, date=date(2026, 1, 5), line=2),
    worlds.price("heron", 450, date=date(2026, 6, 5), line=3),
    worlds.price("heron", 399, date=date(2026, 3, 1), line=4, kind="offer", valid_until=date(2026, 3, 14)),
    worlds.price("heron", 389, date=date(2026, 9, 1), line=5, kind="offer", valid_until=date(2026, 9, 14)),
    worlds.price("heron", 300, date=date(2026, 3, 1), line=6, currency="GBP"),
    worlds.price("heron", 100, date=date(2026, 12, 24), line=7),
]


def history(rows=ROWS):
    return History("EUR", DAY, offers(rows, DAY, "EUR"))


def test_offers_hold_until_seen_anew_or_run_out():
    street, offer = history().offers
    assert [(s.day, s.until) for s in street.seen] == [
        (date(2026, 1, 5), date(2026, 6, 5)),
        (date(2026, 6, 5), DAY),
    ]
    assert [s.until for s in offer.seen] == [date(2026, 3, 14), date(2026, 9, 14)]
    assert (street.stands, offer.stands) == (True, False)


def test_other_currencies_and_later_days_are_not_in_it():
    assert {s.amount for o in history().offers for s in o.seen} == {500.0, 450.0, 399.0, 389.0}


def test_an_offer_that_had_run_out_begins_a_line_of_its_own():
    steps = rows_with(price_picture("p", "Heron", "Union", history()), "line")
    assert {step["line"] for step in steps} == {"0-0", "1-0", "1-1"}


def test_marks_and_labels():
    picture = price_picture("prices-eu", "Heron", "Union", history())
    in_order(picture)
    assert "2026-06-05: EUR 450.00, tax in, street, Quayside Wheels" in marks(picture)
    assert texts(picture).count("street, Quayside Wheels") == 1
    assert picture.description == (
        "4 prices of the Heron seen in Union by 2026-11-20, of 2 offers, from EUR 389.00 to EUR 500.00. "
        "The lowest in force is EUR 450.00, street, Quayside Wheels."
    )


def test_labels_never_touch():
    rows = [worlds.price("heron", 500 + i / 10, line=i + 2, seller=f"Shop {i}") for i in range(9)]
    rows.append(worlds.price("heron", 400, line=20, date=date(2026, 1, 1), seller="Shop 9"))
    picture = price_picture("p", "Heron", "Union", history(rows))
    low, high = price_chart(picture.shown)["layer"][0]["encoding"]["y"]["scale"]["domain"]
    at = [(high - row["amount"]) / (high - low) * 220 for row in rows_with(picture, "text", "amount")]
    assert len(at) == 10
    assert all(b - a >= 16.99 for a, b in pairwise(at))
    assert max(at) <= 220.001


def test_one_price_makes_no_history():
    assert price_picture("p", "Heron", "Union", history(ROWS[:1])) is None
    assert price_picture("p", "Heron", "Union", history([])) is None
    level = price_picture("p", "Heron", "Union", history([ROWS[2], ROWS[2]]))
    assert "lowest in force" not in level.description


def test_days_stay_days_in_every_time_zone():
    code = """
from datetime import date
from spindlewise.site.chart_prices import History, Offer, Seen, price_picture
from spindlewise.site.picture import drawn
one, two, three = date(2026, 1, 1), date(2026, 3, 1), date(2026, 6, 1)
seen = Seen(one, two, 5.0, "EUR 5"), Seen(two, three, 4.0, "EUR 4")
shown = History("EUR", three, (Offer("Shop", "street", "in", True, seen),))
print(drawn(price_picture("p", "Heron", "Union", shown)))
"""
    seen = {
        subprocess.run(
            [sys.executable, "-c", code], env={**os.environ, "TZ": zone}, capture_output=True, check=True
        ).stdout
        for zone in ("Asia/Tokyo", "America/Los_Angeles")
    }
    assert len(seen) == 1


def test_what_is_filled_in_is_what_the_library_would_have_compiled():
    """Whatever the seller is called, and whatever the words of the template are."""
    for seller in ("Quayside Wheels", "@low", '"@points"', "@first", "@title", "back\\slash </script>"):
        rows = [
            worlds.price(
                "heron", 500 + 7 * n, date=date(2026, 1 + n, 5), line=2 + n, seller=seller, kind=kind
            )
            for n, kind in enumerate(("street", "list", "offer", "street", "clearance"))
        ]
        for currency, own in (("EUR", rows), ("JPY", rows[:2])):
            shown = History(currency, DAY, offers(own, DAY, "EUR"))
            assert price_drawing(shown) == vl_convert.vegalite_to_vega(price_chart(shown)), seller


def test_both_are_drawn_alike():
    assert svg_of(price_drawing(history())) == svg_of(price_chart(history()))
