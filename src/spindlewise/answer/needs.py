"""Needs as a filter: which product fails what, and why."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from spindlewise.answer.paid import Paid, Unpriced
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog import as_of as state_of
from spindlewise.catalog.figure import Absent, Known, figure, ingress, weight_g
from spindlewise.catalog.ingress_code import meets
from spindlewise.catalog.product import Product
from spindlewise.reception.reading_mode import Reception
from spindlewise.units import money_text

IN_STATE = {"clearance": "being sold off"}
"""How a state of sale reads in a sentence, where the bare word does not."""


@dataclass(frozen=True, slots=True)
class Failure:
    """A need that a product fails. A safety need also fails on unknown."""

    need: str
    because: str
    safety: bool = False


@dataclass(frozen=True, slots=True)
class Sifted:
    """What a product fails, and which needs could not be checked because nobody knows."""

    failures: tuple[Failure, ...]
    unchecked: tuple[str, ...]


def sift(product: Product, buyer: Buyer, day: date, paid: Paid | Unpriced, reception: Reception) -> Sifted:
    """Hold one product against all needs of the buyer; every failure is named, not the first only."""
    return with_price(sift_but_price(product, buyer, day, reception), buyer, paid)


def sift_but_price(product: Product, buyer: Buyer, day: date, reception: Reception) -> Sifted:
    """The same for all needs but money, which many buyers share."""
    failures: list[Failure] = []
    unchecked: list[str] = []
    _range(product, buyer, day, failures)
    _safety(product, buyer, day, failures)
    _reading(buyer, reception, failures, unchecked)
    _figures(product, buyer, day, failures, unchecked)
    return Sifted(tuple(failures), tuple(unchecked))


def with_price(found: Sifted, buyer: Buyer, paid: Paid | Unpriced) -> Sifted:
    """What was sifted, with what money fails put first."""
    budget = buyer.budget_amount
    if isinstance(paid, Paid) and (budget is None or paid.amount <= budget):
        return found
    return Sifted((money_failure(paid, budget), *found.failures), found.unchecked)


def money_failure(paid: Paid | Unpriced, budget: Decimal | None) -> Failure:
    """Why money fails: there is no price, or it is over the budget."""
    if isinstance(paid, Unpriced):
        return Failure("price", paid.because)
    over = paid.amount - (budget or Decimal(0))
    cost, more = money_text(paid.amount, paid.currency), money_text(over, paid.currency)
    return Failure("budget", f"it costs {cost}, {more} over the budget")


def _range(product: Product, buyer: Buyer, day: date, failures: list[Failure]) -> None:
    needs = buyer.needs
    if needs.kind != "any" and product.kind != needs.kind:
        failures.append(Failure("kind", f"it is a {product.kind}"))
    now = state_of.state(product, day)
    if now == "not yet sold":
        failures.append(Failure("state", f"it was not yet sold on {day.isoformat()}"))
    elif not isinstance(needs.states, str) and now not in needs.states:
        failures.append(Failure("state", f"it is {IN_STATE.get(now, now)}"))


def _safety(product: Product, buyer: Buyer, day: date, failures: list[Failure]) -> None:
    needs = buyer.needs
    too_heavy = rider_weight_failure(product, buyer, day)
    if too_heavy is not None:
        failures.append(too_heavy)
    if not isinstance(needs.shoes, str):
        bolts = product.cleat.bolts
        if bolts == "unknown":
            failures.append(Failure("cleats", "cleat drilling unknown", safety=True))
        elif bolts != needs.shoes.bolts:
            shoe = needs.shoes.bolts
            because = (
                f"it takes no cleat, and the shoes are {shoe}"
                if bolts == "none"
                else f"its {bolts} cleat does not fit {shoe} shoes"
            )
            failures.append(Failure("cleats", because, safety=True))
        elif not isinstance(needs.shoes.patterns, str) and product.cleat.pattern not in needs.shoes.patterns:
            failures.append(Failure("cleats", f"its cleat pattern is {product.cleat.pattern}", safety=True))


def rider_weight_failure(product: Product, buyer: Buyer, day: date) -> Failure | None:
    """How the product fails the rider's weight, if it does; a limit that nobody knows fails too."""
    mass_kg = buyer.needs.rider_mass_kg
    if isinstance(mass_kg, str):
        return None
    limit = figure(product, "rider_limit_kg", day)
    if isinstance(limit, Known) and limit.value < mass_kg:
        because = f"the maker's rider limit is {limit.value:g} kg, below {mass_kg:g} kg"
        return Failure("rider weight", because, safety=True)
    if isinstance(limit, Absent) and limit.kind != "none":
        because = f"rider weight limit {limit.kind} ({limit.because})"
        return Failure("rider weight", because, safety=True)
    return None


def _reading(buyer: Buyer, reception: Reception, failures: list[Failure], unchecked: list[str]) -> None:
    wants_both = buyer.needs.reading == "both sides"
    wants_balance = buyer.needs.balance == "needed"
    if wants_both and reception.mode != "both sides":
        if reception.mode == "unknown":
            unchecked.append(f"both sides on {reception.receiver}: unknown")
        else:
            failures.append(Failure("reading", f"{reception.receiver} shows {reception.mode}"))
    if wants_balance and reception.balance != "arrives":
        if reception.balance == "unknown":
            unchecked.append(f"balance on {reception.receiver}: unknown")
        else:
            failures.append(Failure("balance", f"balance does not arrive at {reception.receiver}"))


def _figures(
    product: Product, buyer: Buyer, day: date, failures: list[Failure], unchecked: list[str]
) -> None:
    needs = buyer.needs
    if needs.water != "not stated":
        code = ingress(product, day)
        if isinstance(code, Absent):
            if code.kind == "unknown":
                unchecked.append(f"{needs.water}: ingress code unknown")
            else:
                failures.append(Failure("water", f"ingress code: {code.kind}"))
        else:
            fits = meets(code.value, needs.water)
            if fits is None:
                unchecked.append(f"{needs.water}: {code.value} does not say")
            elif not fits:
                failures.append(Failure("water", f"{code.value} does not satisfy {needs.water}"))
    bounds = (
        ("weight", needs.weight_g_at_most, "g", -1),
        ("running time", needs.running_hours_at_least, "h", 1),
        ("warranty", needs.warranty_years_at_least, "years", 1),
    )
    for name, bound, unit, sense in bounds:
        if isinstance(bound, str):
            continue
        found = _bounded(product, name, day)
        word = "at most" if sense < 0 else "at least"
        if isinstance(found, Known):
            if (found.value - bound) * sense < 0:
                asked = f"{word} {_measure(bound, unit)} asked"
                because = f"{name} {_measure(found.value, unit)} ({found.grade}), {asked}"
                failures.append(Failure(name, because))
        elif found.kind == "unknown":
            unchecked.append(f"{name} {word} {_measure(bound, unit)}: unknown")
        elif found.kind == "none":
            failures.append(Failure(name, f"{name}: none"))


def _bounded(product: Product, name: str, day: date) -> Known | Absent:
    """The figure that a bound is about."""
    if name == "weight":
        return weight_g(product, day)
    return figure(product, "running_hours" if name == "running time" else "warranty_years", day)


def _measure(value: float, unit: str) -> str:
    return f"{value:g} {'year' if unit == 'years' and value == 1 else unit}"
