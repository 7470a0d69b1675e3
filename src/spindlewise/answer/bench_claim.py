"""A weighing held to what the maker claims: proved over, proved within, cannot tell, or not comparable."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from spindlewise.bench.conformity import Claim, ClaimVerdict, conformity
from spindlewise.bench.weighing import Weighing
from spindlewise.catalog.figure import basis_words, seen
from spindlewise.catalog.observation import WeightFigure
from spindlewise.catalog.product import Product


@dataclass(frozen=True, slots=True)
class Held:
    """The claim that a weighing was held to, and the verdict on it.

    `tolerance_g` is what the maker states about the claim, None where he states nothing: then the claim is
    taken at its word. Where no claim is on a like basis, this is the newest claim, and not comparable.
    """

    claimed_g: float
    tolerance_g: float | None
    date: date
    source: str
    basis: str
    verdict: ClaimVerdict


def hold_to_claim(weighing: Weighing, product: Product | None, day: date) -> Held | None:
    """Hold a weighing to the newest claim on a like basis by `day` (ISO 14253-1); None where none is made.

    A claimed weight promises at most that much.
    """
    if product is None:
        return None
    series = product.observations.weight_g
    claims = [
        (claim, claim.value)
        for claim in seen(series, day)
        if claim.grade == "claimed" and not isinstance(claim.value, str) and claim.value > 0
    ]
    held = [_held(weighing, claim, value) for claim, value in claims]
    like = [one for one in held if one.verdict.verdict != "not comparable"]
    return next(iter(like or held), None)


def basis_of(weighing: Weighing) -> Mapping[str, str]:
    """What lay on the scales, in the catalog's keys."""
    basis = weighing.basis
    return {"count": basis.count, "batteries": basis.batteries, "cleats": basis.cleats}


def _held(weighing: Weighing, claim: WeightFigure, value: float) -> Held:
    stated = None if isinstance(claim.plus_minus, str) else claim.plus_minus
    basis = {"count": claim.basis.count, "batteries": claim.basis.batteries, "cleats": claim.basis.cleats}
    verdict = conformity(
        weighing.mean_g, weighing.expanded_g, basis_of(weighing), Claim(value, basis, stated or 0.0)
    )
    return Held(value, stated, claim.date, claim.source, basis_words(claim), verdict)
