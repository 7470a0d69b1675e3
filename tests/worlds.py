"""Small invented catalogs for tests, built from the same models as an author's files."""

from collections.abc import Iterable, Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from spindlewise.answer.desk import Desk
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.criteria import Criteria
from spindlewise.catalog.money import RateRow, RateTable, TaxRow, TaxTable
from spindlewise.catalog.price_row import PriceRow
from spindlewise.catalog.product import Product
from spindlewise.catalog.settings import Settings

DAY = date(2026, 11, 20)
BOUGHT = {"unit": "bought at retail", "source": "invoice", "returned": "kept", "commission": "none"}
START = {"since": date(2025, 1, 1), "firmware": "not applicable", "source": "bench"}
POINTS = {"price": 40, "weight": 30, "reading_uncertainty": 30}
CURVES: dict[str, tuple[tuple[float, float], ...]] = {
    "price": ((200, 1.0), (600, 0.5), (1200, 0.0)),
    "ownership": ((200, 1.0), (1500, 0.0)),
    "weight": ((280, 1.0), (450, 0.0)),
    "reading_uncertainty": ((1, 1.0), (9, 0.0)),
    "running_time": ((15, 0.0), (150, 1.0)),
    "warranty": ((0, 0.0), (5, 1.0)),
    "stack": ((8, 1.0), (18, 0.0)),
}
SPANS = {
    "price": (300, 1100),
    "ownership": (350, 1500),
    "weight": (290, 430),
    "reading_uncertainty": (1.5, 8),
    "running_time": (20, 100),
    "warranty": (1, 3),
    "stack": (9, 16),
}
STEPS = {
    "power, balance and stroke metrics": 1.0,
    "power and balance": 0.85,
    "power only": 0.6,
    "one side doubled": 0.35,
    "one side only": 0.1,
    "nothing": 0.0,
    "unknown": 0.0,
}


@cache
def criteria() -> Criteria:
    """Plain value curves in EUR."""
    curves: dict[str, Any] = {
        name: {
            "title": name,
            "what": name,
            "unit": "u",
            "knots": tuple({"at": float(x), "merit": m} for x, m in knots),
            "plausible": {"low": float(SPANS[name][0]), "high": float(SPANS[name][1])},
            "source": "test",
        }
        for name, knots in CURVES.items()
    }
    curves["detail"] = {"title": "detail", "what": "detail", "steps": dict(STEPS), "source": "test"}
    return Criteria.model_validate(
        {"schema": "spindlewise criteria 1", "currency": "EUR", "criteria": curves}
    )


def seen(value: float | str, basis: Mapping[str, str] | None = None, **more: Any) -> dict[str, Any]:
    """One observation."""
    entry: dict[str, Any] = {
        "grade": "measured",
        "date": date(2026, 1, 10),
        "source": "bench/weighings.csv",
        "value": value if isinstance(value, str) else float(value),
        **more,
    }
    if basis is not None:
        entry["basis"] = dict(basis)
    return entry


def weighed(value: float, plus_minus: float | str = 1.0, **more: Any) -> dict[str, Any]:
    """A weight of the pair, batteries in, cleats off."""
    basis = {"count": "pair", "batteries": "in", "cleats": "off"}
    return seen(value, basis, plus_minus=plus_minus, **more)


def stack(value: float, span: str = "axis to pedal top", **more: Any) -> dict[str, Any]:
    """A stack height."""
    return seen(value, {"span": span}, plus_minus=0.2, **more)


def link(
    protocol: str, power: str = "both sides", balance: str = "carried", metrics: str = "absent"
) -> dict[str, Any]:
    """A protocol that carries the same since the start."""
    return {
        "protocol": protocol,
        "carries": tuple(
            {"what": what, "how": how, **START}
            for what, how in (("power", power), ("balance", balance), ("stroke metrics", metrics))
        ),
    }


TRIED: dict[str, Any] = {
    "reading_bias_pct": (seen(0.0, plus_minus=0.2),),
    "reading_spread_pct": (seen(0.8),),
    "temperature_pct": (seen(0.5),),
}
"""What a bench ride adds, so that nothing in the uncertainty of the reading is left to what is plausible."""


def product(name: str, observations: Mapping[str, Any] | None = None, **changes: Any) -> Product:
    """A power pedal with known figures; `observations` and `changes` replace some of them."""
    figures: dict[str, Any] = {
        "weight_g": (weighed(330.0),),
        "stack_mm": (stack(11.0),),
        "pedal_offset_mm": (seen(54.0, {"span": "crank face to pedal centre"}, plus_minus=0.2),),
        "rider_limit_kg": (seen(110.0, grade="claimed"),),
        "tolerance_pct": (seen(1.5, {"of": "total power"}, grade="claimed"),),
        "running_hours": (seen(60.0, {"cells": "built-in"}, plus_minus=4.0),),
        "warranty_years": (seen(2.0, grade="claimed"),),
        "ingress": (seen("IPX7", grade="claimed"),),
        "fitting_torque_nm": (seen(35.0, grade="claimed"),),
        **(observations or {}),
    }
    record: dict[str, Any] = {
        "schema": "spindlewise product 1",
        "id": name,
        "name": name.title(),
        "maker": "Invented Works",
        "family": "none",
        "kind": "power pedal",
        "sides": "both",
        "summary": "An invented pedal.",
        "statuses": ({"state": "current", "since": date(2025, 1, 1), "source": "maker"},),
        "cleat": {"bolts": "three-bolt", "pattern": "Keel", "height_mm": 5.5, "plus_minus_mm": 0.2},
        "tools": {"fitting": ("hex key 8 mm",)},
        "battery": "unknown",
        "service": "none",
        "links": (link("ANT+"), link("Bluetooth")),
        "disclosure": BOUGHT,
        "observations": figures,
        "reliability": "none",
        "safety_notices": "none",
        **changes,
    }
    return Product.model_validate(record)


def plain(name: str, weight_g: float = 300.0, **changes: Any) -> Product:
    """A plain pedal."""
    basis = {"count": "pair", "batteries": "not applicable", "cleats": "off"}
    observations = {
        "weight_g": (seen(weight_g, basis, plus_minus=1.0),),
        "tolerance_pct": "not applicable",
        "running_hours": "not applicable",
        **changes.pop("observations", {}),
    }
    return product(
        name,
        observations,
        kind="plain pedal",
        sides="not applicable",
        links="not applicable",
        battery="not applicable",
        **changes,
    )


def price(name: str, amount: float | str, **changes: Any) -> PriceRow:
    """A street price in EU, EUR, tax in."""
    fields: dict[str, Any] = {
        "line": 2,
        "date": date(2026, 10, 1),
        "product": name,
        "region": "EU",
        "currency": "EUR",
        "amount": Decimal(str(amount)).quantize(Decimal("0.01")),
        "tax": "in",
        "kind": "street",
        "seller": "Quayside Wheels",
        "valid_until": None,
        "source": "seen",
        **changes,
    }
    return PriceRow(**fields)


def catalog(products: Iterable[Product], prices: Iterable[PriceRow]) -> Catalog:
    """A catalog of these products and prices, with rates and taxes for EU, US and JP."""
    regions = {
        "EU": {"name": "Union", "currency": "EUR"},
        "US": {"name": "States", "currency": "USD"},
        "JP": {"name": "Isles", "currency": "JPY"},
    }
    settings = Settings.model_validate(
        {
            "schema": "spindlewise catalog 1",
            "title": "Test",
            "invented": "Everything here is invented.",
            "as_of": DAY,
            "regions": regions,
            "price_age_days": 120,
            "cautions": ("Small steps; see a qualified fitter.",),
        }
    )
    rates = RateTable(
        [
            RateRow(date(2026, 1, 1), "EUR", "USD", Decimal("1.10")),
            RateRow(date(2026, 1, 1), "EUR", "JPY", Decimal("160")),
        ]
    )
    taxes = TaxTable(
        [
            TaxRow(date(2025, 1, 1), "EU", Decimal(20), "in"),
            TaxRow(date(2025, 1, 1), "US", Decimal("7.5"), "out"),
            TaxRow(date(2025, 1, 1), "JP", Decimal(10), "in"),
        ]
    )
    listed = {p.id: p for p in products}
    return Catalog(
        Path("test"), settings, criteria(), dict(sorted(listed.items())), tuple(prices), rates, taxes, {}
    )


def desk(products: Iterable[Product], prices: Iterable[PriceRow]) -> Desk:
    """A desk on such a catalog."""
    return Desk(catalog(products, prices))


def buyer(points: Mapping[str, float] | None = None, **changes: Any) -> Buyer:
    """A buyer in EU who weighs price, weight and the reading."""
    weights = {"points": {k: float(v) for k, v in (points or POINTS).items()}}
    record: dict[str, Any] = {
        "schema": "spindlewise buyer 1",
        "id": "tester",
        "name": "Tester",
        "question": "Which one?",
        "region": "EU",
        "currency": "EUR",
        "weights": weights,
        "receivers": (
            {
                "name": "head unit",
                "protocols": ("ANT+", "Bluetooth"),
                "channels": "unlimited",
                "pairs_two_sensors": "cannot",
            },
        ),
        **changes,
    }
    return Buyer.model_validate(record)
