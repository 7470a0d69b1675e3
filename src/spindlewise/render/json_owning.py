"""The cost of owning one product over the buyer's years as JSON."""

from decimal import Decimal

from spindlewise.answer.owning import Owned
from spindlewise.render.as_json import Json
from spindlewise.units import amount_text


def owned_json(owned: Owned, currency: str) -> dict[str, Json]:
    """The account line by line; a lower bound where `unknown` names parts of which nobody knows the price."""
    account = owned.account

    def amount(value: Decimal) -> str:
        return amount_text(value, currency)

    return {
        "years": float(owned.years),
        "hours_per_year": float(owned.hours_per_year),
        "currency": currency,
        "total": amount(account.known_total),
        "per_year": amount(account.per_year),
        "per_hour": None if account.per_hour is None else amount(account.per_hour),
        "lines": [
            {
                "what": line.name,
                "times": float(line.times),
                "price": amount(line.price),
                "amount": amount(line.amount),
            }
            for line in account.lines
        ],
        "unknown": list(account.unknown),
        "complete": account.complete,
    }
