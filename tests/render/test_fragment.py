"""A buyer as a link: what is in it, in which words, and what never is."""

from decimal import Decimal

import pytest

import worlds
from spindlewise.render.fragment import LONGEST, PAGE, can_be_linked, fragment, page_link


def parts(buyer, **options):
    first, *rest = fragment(buyer, **options).removeprefix("#").split("&")
    assert first == "v=1"
    return [tuple(part.split("=", 1)) for part in rest]


def test_a_plain_question_is_short():
    assert fragment(worlds.buyer({"price": 40, "weight": 12.5}, receivers=())) == (
        "#v=1&region=EU&points=price:40,weight:12.5"
    )


def test_two_products_stand_side_by_side_behind_the_link():
    buyer = worlds.buyer({"price": 40}, receivers=())
    assert fragment(buyer, pair=("heron-one", "siskin-two")).endswith("&pair=heron-one,siskin-two")
    catalog = worlds.catalog([worlds.product("heron-one")], [worlds.price("heron-one", 500)])
    assert page_link(catalog, buyer, ("a", "b")) == f"{PAGE}{fragment(buyer, pair=('a', 'b'))}"
    assert page_link(catalog, worlds.buyer(currency="USD")) is None


def test_everything_stated_is_in_it_in_the_pages_words():
    buyer = worlds.buyer(
        budget=Decimal("899.90"),
        present_pedals="heron-one",
        needs={
            "kind": "any",
            "states": ("current", "clearance"),
            "shoes": {"bolts": "three-bolt", "patterns": ("Fin & Co", "Keel")},
            "reading": "both sides",
            "balance": "needed",
            "water": "IPX6",
            "weight_g_at_most": 350.0,
            "running_hours_at_least": 40.5,
            "warranty_years_at_least": 2.0,
        },
        bike={"crank_mm": 172.5, "new_crank_mm": 170.0, "head_unit_crank_mm": 175.0},
        shoes={"sole_mm": "unknown", "new_sole_mm": 5.5},
        riding={"hours_per_year": 300.0, "years": 4.0},
        receivers=(
            {
                "name": "old head unit",
                "protocols": ("ANT+",),
                "channels": {"total": 4, "kept": ("speed", "lights")},
                "pairs_two_sensors": "cannot",
                "shows_balance": "unknown",
            },
            {"name": "phone", "protocols": ("Bluetooth",), "channels": "unknown", "pairs_two_sensors": "can"},
        ),
    )
    assert parts(buyer) == [
        ("region", "EU"),
        ("budget", "899.9"),
        ("points", "price:40,weight:30,reading_uncertainty:30"),
        ("receiver", "ant,2,cannot,unknown,can"),
        ("receiver", "bluetooth,unknown,can,can,can"),
        ("present", "heron-one"),
        ("kind", "any"),
        ("states", "current,clearance"),
        ("shoes", "three-bolt"),
        ("pattern", "Fin%20%26%20Co"),
        ("pattern", "Keel"),
        ("reading", "both"),
        ("balance", "needed"),
        ("water", "IPX6"),
        ("grams", "350"),
        ("hours", "40.5"),
        ("warranty", "2"),
        ("crank", "172.5"),
        ("new-crank", "170"),
        ("set-crank", "175"),
        ("sole", "unknown"),
        ("new-sole", "5.5"),
        ("ride", "300"),
        ("keep", "4"),
    ]


def test_more_sensors_kept_than_channels_leave_none_free():
    channels = {"total": 1, "kept": ("speed", "lights", "other")}
    receiver = {"name": "r", "protocols": ("ANT+",), "channels": channels, "pairs_two_sensors": "can"}
    assert ("receiver", "ant,0,can,can,can") in parts(worlds.buyer(receivers=(receiver,)))


def test_body_and_balance_come_only_when_asked_for():
    buyer = worlds.buyer(
        needs={"rider_mass_kg": 82.5},
        riding={"balance_left_pct": {"low": 47.0, "high": 49.5}, "threshold_power_w": 271.0},
        body={"height_mm": 1812.0, "foot_pitch_bottom_deg": 17.0},
        bike={"saddle_height_mm": 733.0},
    )
    open_to_all = fragment(buyer)
    asked_for = fragment(buyer, with_private=True)
    assert asked_for == f"{open_to_all}&mass=82.5&left=47-49.5"
    for text in ("82", "47", "1812", "17.0", "271", "733"):
        assert text not in open_to_all
    for text in ("1812", "271", "733"):
        assert text not in asked_for


def test_a_name_and_a_question_never_travel():
    link = fragment(worlds.buyer(name="Robin of the bay", question="Is this in the link?"))
    assert "Robin" not in link
    assert "Is" not in link


@pytest.mark.parametrize(
    ("order", "points"),
    [
        (("price", "weight"), "price:3,weight:1"),
        (("weight", "price", "detail", "warranty"), "price:13,weight:25,warranty:3,detail:7"),
    ],
)
def test_an_order_of_importance_becomes_whole_points(order, points):
    """Rank-order centroids (Barron and Barrett 1996), multiplied up."""
    buyer = worlds.buyer(weights={"order": order})
    assert ("points", points) in parts(buyer)


def test_a_long_order_becomes_points_with_decimals():
    order = ("price", "weight", "detail", "warranty", "stack", "running_time", "reading_uncertainty")
    found = dict(parts(worlds.buyer(weights={"order": order})))["points"]
    points = {k: float(v) for k, v in (entry.split(":") for entry in found.split(","))}
    assert sum(points.values()) == pytest.approx(100)
    assert points["price"] == max(points.values())


def test_pairs_become_shares_in_percent():
    pairs = ({"more": "price", "than": "weight", "times": 3.0},)
    found = dict(parts(worlds.buyer(weights={"pairs": pairs})))["points"]
    assert {k: round(float(v), 9) for k, v in (e.split(":") for e in found.split(","))} == {
        "price": 75.0,
        "weight": 25.0,
    }


def test_the_longest_that_the_demo_asks_is_far_from_the_cap():
    patterns = tuple(f"Pattern {k}" for k in range(20))
    buyer = worlds.buyer(needs={"shoes": {"bolts": "three-bolt", "patterns": patterns}})
    assert len(fragment(buyer, with_private=True)) < LONGEST / 2


@pytest.mark.parametrize(
    ("region", "currency", "can"),
    [("EU", "EUR", True), ("US", "USD", True), ("EU", "USD", False), ("MARS", "EUR", False)],
)
def test_the_page_asks_in_a_regions_own_money_only(region, currency, can):
    catalog = worlds.catalog([worlds.product("heron")], [])
    assert can_be_linked(catalog, worlds.buyer(region=region, currency=currency)) is can
