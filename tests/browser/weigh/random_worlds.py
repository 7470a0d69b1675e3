"""Random catalogs and random questions, from a seed, for holding the page's script against Python."""

from __future__ import annotations

from datetime import date
from random import Random
from typing import Any

import worlds
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import Product

NAMES = ("auk", "brant", "crake", "dunlin", "eider", "fulmar", "godwit", "heron")
POWERS = ("both sides", "two channels", "one side doubled", "none", "unknown")
CARRIES = ("carried", "absent", "unknown")
CODES = ("IPX4", "IPX5/IPX7", "IPX7", "IP67", "IP5X", "none", "unknown")
ABLE = ("can", "cannot", "unknown")
NOTICE = {
    "date": date(2026, 10, 2),
    "ended": "none",
    "what": "The spindle may crack.",
    "action": "Stop riding.",
    "issued_by": "Invented Works",
}


def random_catalog(draw: Random) -> Catalog:
    """Two to eight products with figures known, uncertain, unknown and absent, and their prices."""
    names = NAMES[: draw.randint(2, len(NAMES))]
    products = [_product(draw, name) for name in names]
    prices = [
        worlds.price(
            name,
            _amount(draw, currency),
            region=region,
            currency=draw.choice((currency, currency, "EUR")),
            tax=draw.choice(("in", "out")),
            kind=draw.choice(("street", "list", "clearance")),
        )
        for name in names
        for region, currency in (("EU", "EUR"), ("US", "USD"), ("JP", "JPY"))
        for _ in range(draw.choice((0, 1, 1, 1, 2)))
    ]
    return worlds.catalog(products, prices)


def _amount(draw: Random, currency: str) -> float:
    return draw.randint(20_000, 200_000) if currency == "JPY" else draw.randint(15_000, 140_000) / 100


def _product(draw: Random, name: str) -> Product:
    if draw.random() < 0.15:
        return worlds.plain(name, draw.randint(220, 420))
    cleat = draw.choice(
        (
            {"bolts": "three-bolt", "pattern": "Keel", "height_mm": 5.5, "plus_minus_mm": 0.2},
            {"bolts": "three-bolt", "pattern": "Fin & Co", "height_mm": 6.1, "plus_minus_mm": "unknown"},
            {"bolts": "two-bolt", "pattern": "Rudder", "height_mm": "unknown", "plus_minus_mm": "unknown"},
            {"bolts": "unknown", "pattern": "Keel", "height_mm": 5.0, "plus_minus_mm": 0.3},
        )
    )
    span = draw.choice(("axis to pedal top", "axis to sole"))
    basis = {"of": "total power"}
    changes: dict[str, Any] = {
        "cleat": cleat,
        "sides": draw.choice(("both", "both", "left", "right")),
        "links": draw.choice(
            ("unknown", tuple(_link(draw, p) for p in draw.sample(("ANT+", "Bluetooth"), draw.randint(1, 2))))
        ),
        "statuses": (
            {
                "state": draw.choice(("current", "superseded", "clearance", "discontinued")),
                "since": draw.choice((date(2025, 1, 1), date(2027, 1, 1)))
                if draw.random() < 0.2
                else date(2025, 1, 1),
                "source": "maker",
            },
        ),
        "safety_notices": (NOTICE,) if draw.random() < 0.15 else "none",
        "battery": draw.choice(("unknown", _battery(draw))),
        "maker": draw.choice(("Invented Works", "Shore <b>& Sons</b>")),
    }
    observations: dict[str, Any] = {
        "weight_g": _maybe(
            draw, worlds.weighed(draw.randint(2800, 4500) / 10, draw.choice((0.5, 2.0, 8.0, "unknown")))
        ),
        "stack_mm": _maybe(draw, worlds.stack(draw.randint(80, 180) / 10, span)),
        "rider_limit_kg": _maybe(
            draw, worlds.seen(draw.choice((80.0, 100.0, 120.5)), grade="claimed"), "none"
        ),
        "tolerance_pct": _maybe(draw, worlds.seen(draw.choice((1.0, 1.5, 2.0)), basis, grade="claimed")),
        "running_hours": _maybe(
            draw, worlds.seen(draw.randint(10, 160), {"cells": "built-in"}, plus_minus=4.0)
        ),
        "warranty_years": _maybe(draw, worlds.seen(draw.choice((1.0, 2.0, 3.0)), grade="claimed"), "none"),
        "ingress": (worlds.seen(draw.choice(CODES), grade="claimed"),),
        "temperature_pct": _maybe(draw, worlds.seen(draw.choice((0.5, 1.2)))),
    }
    if draw.random() < 0.5:
        observations["reading_bias_pct"] = (worlds.seen(draw.choice((-2.1, 0.6, 1.3)), plus_minus=0.4),)
        observations["reading_spread_pct"] = (
            worlds.seen(
                draw.choice((0.4, 1.2)),
            ),
        )
    return worlds.product(name, observations, **changes)


def _maybe(draw: Random, entry: dict[str, Any], other: str = "unknown") -> Any:
    roll = draw.random()
    return "unknown" if roll < 0.15 else ({**entry, "value": other},) if roll < 0.25 else (entry,)


def _link(draw: Random, protocol: str) -> dict[str, Any]:
    return worlds.link(protocol, draw.choice(POWERS), draw.choice(CARRIES), draw.choice(CARRIES))


def _battery(draw: Random) -> dict[str, Any]:
    price = {
        "date": date(2026, 5, 1),
        "region": draw.choice(("EU", "US")),
        "currency": "EUR",
        "amount": draw.randint(200, 1500) / 100,
        "tax": "in",
        "source": "seen",
    }
    return {
        "type": "AAA",
        "count": 4,
        "cell_weight_g": 11.5,
        "spare_prices": draw.choice(("unknown", (price,))),
    }


def random_points(draw: Random) -> dict[str, float]:
    """Points for some criteria, never for price and ownership at once."""
    names = ["weight", "reading_uncertainty", "running_time", "warranty", "stack", "detail"]
    some = [*draw.sample(names, draw.randint(0, len(names))), draw.choice(("price", "ownership"))]
    return {name: draw.choice((1.0, 7.5, float(draw.randint(1, 100)), draw.random() * 100)) for name in some}


def random_question(draw: Random, catalog: Catalog, points: dict[str, float] | None = None) -> Buyer:
    """A question of somebody in one of the catalog's regions, in that region's money."""
    region, facts = draw.choice(list(catalog.settings.regions.items()))
    some = lambda value, share=0.15: value if draw.random() < share else None  # noqa: E731  # read at a glance
    needs = {
        "rider_mass_kg": some(draw.choice((70.0, 95.5, 118.0))),
        "shoes": some({"bolts": draw.choice(("two-bolt", "three-bolt"))}),
        "reading": some("both sides", 0.1),
        "balance": some("needed", 0.1),
        "water": some(draw.choice(("IPX5", "IPX7", "IP5X")), 0.1),
        "weight_g_at_most": some(float(draw.randint(300, 420)), 0.1),
        "running_hours_at_least": some(float(draw.randint(20, 80)), 0.1),
        "warranty_years_at_least": some(2.0, 0.1),
        "states": some(("current", "superseded"), 0.1),
        "kind": some(draw.choice(("any", "plain pedal")), 0.1),
    }
    bike = {
        "crank_mm": some(draw.choice((170.0, 172.5)), 0.5),
        "head_unit_crank_mm": some(draw.choice((170.0, 172.5)), 0.5),
        "new_crank_mm": some(165.0, 0.1),
    }
    riding = {
        "hours_per_year": some(float(draw.randint(50, 700))),
        "years": some(float(draw.randint(1, 10))),
        "balance_left_pct": some({"low": 46.0, "high": draw.choice((46.0, 49.5, 53.0))}, 0.5),
    }
    stated = {"needs": needs, "bike": bike, "riding": riding}
    budget = draw.choice(("none", "none", draw.randint(400, 1200) * (160 if facts.currency == "JPY" else 1)))
    return worlds.buyer(
        points or random_points(draw),
        region=region,
        currency=facts.currency,
        budget=budget,
        present_pedals=draw.choice(("none", "unknown", *catalog.products)),
        receivers=tuple(_receiver(draw) for _ in range(draw.choice((0, 1, 1, 2)))),
        **{part: {k: v for k, v in entries.items() if v is not None} for part, entries in stated.items()},
    )


def _receiver(draw: Random) -> dict[str, Any]:
    channels = draw.choice(
        ("unlimited", "unknown", {"total": draw.randint(0, 5), "kept": draw.choice(((), ("speed",)))})
    )
    return {
        "name": "your receiver",
        "protocols": draw.choice((("ANT+",), ("Bluetooth",), ("Bluetooth", "ANT+"))),
        "channels": channels,
        "pairs_two_sensors": draw.choice(ABLE),
        "shows_balance": draw.choice(ABLE),
        "shows_stroke_metrics": draw.choice(ABLE),
    }
