"""What the grams of a swap are worth on the buyer's own climb."""

import pytest

import worlds
from spindlewise.answer.gram_worth import gram_worth
from spindlewise.answer.swap import swap

HILL = {"climb": {"length_m": 10_000.0, "gradient_pct": 8.0, "power_w": 250.0}}
RIDER = {"needs": {"rider_mass_kg": 72.0}, "bike": {"bike_mass_kg": 8.0}}


def change(old=360.0, new=300.0):
    products = [
        worlds.product(n, {"weight_g": (worlds.weighed(w),)}) for n, w in (("old", old), ("new", new))
    ]
    return swap(*products, worlds.DAY, None, ()).weight


def test_60_grams_less_save_about_two_seconds_in_some_45_minutes():
    found = gram_worth(worlds.buyer(riding=HILL, **RIDER), change())

    assert found.per_gram_s == pytest.approx(0.0314, abs=1e-4)
    assert found.change_s == pytest.approx(-60 * found.per_gram_s)
    assert found.low_s < found.change_s < found.high_s < 0
    assert found.per_hour_s == pytest.approx(found.change_s * 3600 / found.climb_s)


def test_heavier_never_climbs_faster():
    buyer = worlds.buyer(riding=HILL, **RIDER)

    assert gram_worth(buyer, change(300.0, 360.0)).change_s > 0


def test_what_is_missing_is_named():
    assert gram_worth(worlds.buyer(), change()) == "a climb, the rider's weight, the bike's weight"
    assert gram_worth(worlds.buyer(riding=HILL, **RIDER), None) == "the weight of both pedals"
