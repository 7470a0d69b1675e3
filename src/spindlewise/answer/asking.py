"""A question: a buyer from a file, from single statements, or from a file with statements in its place."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from spindlewise.answer.stated import did_you_mean
from spindlewise.buyer.buyer import Buyer
from spindlewise.buyer.receiver import Receiver
from spindlewise.buyer.weights import CriterionName, Weights
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.document import Document
from spindlewise.catalog.reading import read_record
from spindlewise.problems import Problem, sorted_problems

USUAL_POINTS: Mapping[CriterionName, float] = {
    "price": 30.0,
    "weight": 20.0,
    "reading_uncertainty": 30.0,
    "running_time": 10.0,
    "detail": 10.0,
}
"""Stand in where nobody states weights, and are said to. Design choice, no source."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What is stated beside a buyer file, or in place of one; None is not stated."""

    budget: Decimal | None = None
    region: str | None = None
    currency: str | None = None
    receivers: tuple[Receiver, ...] = ()
    points: Mapping[CriterionName, float] | None = None
    order: tuple[CriterionName, ...] | None = None
    rider_mass_kg: float | None = None
    both_sides: bool = False
    present_pedals: str | None = None


def ask(catalog: Catalog, asked: Asked, base: Buyer | None = None) -> Buyer:
    """The buyer that asks: `base` with what is stated beside it, or one made of statements alone.

    A region brings its currency. Raises ValueError where weights are stated twice, where a budget would
    silently change its currency, and for present pedals that the catalog does not have.
    """
    if asked.points is not None and asked.order is not None:
        raise ValueError("weights are stated as points and as an order; state them one way")
    if asked.present_pedals not in (None, "none", "unknown", *catalog.products):
        near = did_you_mean(asked.present_pedals or "", catalog.products)
        raise ValueError(f"the catalog has no product {asked.present_pedals}; {near}")
    region, currency = _market(catalog, asked, base)
    if (
        base is not None
        and base.budget_amount is not None
        and asked.budget is None
        and currency != base.currency
    ):
        raise ValueError(f"the buyer's budget is in {base.currency}; state one in {currency} too")
    fields = _fields(base) | {"region": region, "currency": currency}
    if asked.budget is not None:
        fields["budget"] = asked.budget
    if asked.receivers:
        fields["receivers"] = asked.receivers
    if asked.present_pedals is not None:
        fields["present_pedals"] = asked.present_pedals
    stated = stated_weights(asked)
    if stated is not None:
        fields["weights"] = stated
    needs: dict[str, Any] = {}
    if asked.rider_mass_kg is not None:
        needs["rider_mass_kg"] = asked.rider_mass_kg
    if asked.both_sides:
        needs["reading"] = "both sides"
    if needs:
        fields["needs"] = {**_needs(base), **needs}
    return Buyer.model_validate(fields)


def stated_weights(asked: Asked) -> Weights | None:
    """The weights as stated, or nothing. Raises ValueError for weights that contradict themselves."""
    if asked.points is None and asked.order is None:
        return None
    named = [
        name for name, points in (asked.points or dict.fromkeys(asked.order or (), 1.0)).items() if points
    ]
    if not named:
        raise ValueError("all weights are 0; give at least one criterion more than 0")
    if "price" in named and "ownership" in named:
        raise ValueError("price and ownership count the same money twice; weigh one of them")
    points = None if asked.points is None else dict(asked.points)
    return Weights(points=points, order=asked.order)


def _market(catalog: Catalog, asked: Asked, base: Buyer | None) -> tuple[str, str]:
    regions = catalog.settings.regions
    region = asked.region or (base.region if base else next(iter(regions)))
    if asked.currency:
        return region, asked.currency
    if base is not None and region == base.region:
        return region, base.currency
    return region, regions[region].currency if region in regions else (base.currency if base else "EUR")


def _fields(base: Buyer | None) -> dict[str, Any]:
    if base is not None:
        return {name: getattr(base, name) for name in Buyer.model_fields}
    return {
        "schema_": "spindlewise buyer 1",
        "id": "you",
        "name": "you",
        "question": "Which power pedals suit me?",
        "weights": {"points": dict(USUAL_POINTS), "sure": "barely"},
    }


def _needs(base: Buyer | None) -> dict[str, Any]:
    if base is None:
        return {}
    return {name: getattr(base.needs, name) for name in type(base.needs).model_fields}


def open_buyers(folder: Path, catalog: Catalog | None = None) -> tuple[dict[str, Buyer], list[Problem]]:
    """All buyers in a folder by id, in order of id, and every problem of every file; none for no folder.

    With a catalog, what a buyer names and the catalog does not have is a problem too.
    """
    buyers: dict[str, Buyer] = {}
    problems: list[Problem] = []
    for path in sorted(folder.glob("*.yaml")):
        buyer, document, found = read_record(Buyer, path)
        problems += found
        if buyer is None or document is None:
            continue
        if buyer.id == path.stem:
            buyers[buyer.id] = buyer
        else:
            message = f"id: the id is {buyer.id}, the file's name says {path.stem}"
            problems.append(
                Problem(
                    document.place(("id",)), "error", "buyer-file-name", message, "make the two alike", "id"
                )
            )
        if catalog is not None:
            problems += buyer_problems(catalog, buyer, document)
    return buyers, sorted_problems(problems)


def buyer_problems(catalog: Catalog, buyer: Buyer, document: Document) -> list[Problem]:
    """What a buyer names that the catalog does not have: a product, a region."""
    named: tuple[tuple[str, str, str, Collection[str]], ...] = (
        ("present_pedals", "product", buyer.present_pedals, ("none", "unknown", *catalog.products)),
        ("region", "region", buyer.region, catalog.settings.regions),
    )
    return [
        Problem(
            document.place((field,)),
            "error",
            f"unknown-{what}",
            f"{field}: the catalog has no {what} {name}",
            did_you_mean(name, known),
            field,
        )
        for field, what, name, known in named
        if name not in known
    ]
