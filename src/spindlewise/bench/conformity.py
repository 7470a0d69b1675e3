"""Whether a claim holds, by the decision rule that gives the doubt to nobody (ISO 14253-1)."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, get_args

Sense = Literal["at most", "at least", "about"]
"""What a claim promises: no more (a weight), no less (hours), or the figure itself within its tolerance."""

Conformity = Literal["proved over", "proved under", "proved within", "cannot tell", "not comparable"]


@dataclass(frozen=True, slots=True)
class Claim:
    """A claimed figure, its tolerance, what it promises, and its basis (name to words).

    Raises ValueError for a figure that is not finite and above zero, a tolerance below zero, an unknown
    sense, and a claim of `about` without a tolerance: nothing measured could ever be proved within it.
    """

    value: float
    basis: Mapping[str, str]
    tolerance: float = 0.0
    sense: Sense = "at most"

    def __post_init__(self) -> None:
        if not 0.0 < self.value < math.inf or not 0.0 <= self.tolerance < math.inf:
            raise ValueError(
                f"a claim of {self.value} -/+ {self.tolerance}; the figure is above 0, the"
                " tolerance 0 or more"
            )
        if self.sense not in get_args(Sense) or (self.sense == "about" and self.tolerance == 0.0):
            raise ValueError(
                f"a claim of {self.sense!r} with a tolerance of {self.tolerance}; it is one of"
                f" {', '.join(get_args(Sense))}, and 'about' has a tolerance"
            )


@dataclass(frozen=True, slots=True)
class ClaimVerdict:
    """The verdict, and measured minus claimed in the claim's unit and in percent of the claim.

    `unlike` names the parts of the basis that differ or that nobody states; the differences are then None.
    """

    verdict: Conformity
    difference: float | None
    difference_pct: float | None
    unlike: tuple[str, ...]


def conformity(measured: float, expanded: float, basis: Mapping[str, str], claim: Claim) -> ClaimVerdict:
    """Say whether a measured figure proves a claim wrong or right, on like bases only.

    With U the expanded uncertainty (k = 2): `proved over` only where measured - U lies above the upper limit,
    `proved under` where measured + U lies below the lower one, `proved within` where the whole interval lies
    within (ends included), else `cannot tell`: whoever would prove something has the uncertainty against him
    (ISO 14253-1; the edition of 2017 allows a narrower guard band for a stated risk, from memory). The limits
    are value + tolerance for `at most`, value - tolerance for `at least`, both for `about`. Bases that differ
    in any part, or a part that is unknown or missing on either side, are `not comparable`, and which part is
    named. Raises ValueError for a measured figure that is not finite, or an uncertainty below zero.

    >>> basis = {"count": "pair", "batteries": "in"}
    >>> found = conformity(404.0, 1.0, basis, Claim(398.0, basis))
    >>> found.verdict, found.difference, round(found.difference_pct, 1)
    ('proved over', 6.0, 1.5)
    >>> conformity(404.0, 1.0, basis, Claim(380.0, {"count": "pair", "batteries": "out"})).unlike
    ('batteries',)
    """
    if not math.isfinite(measured) or not 0.0 <= expanded < math.inf:
        raise ValueError(f"measured {measured} -/+ {expanded}; both are finite, the uncertainty 0 or more")
    unlike = tuple(
        part
        for part in sorted({*basis, *claim.basis})
        if "unknown" in (stated := (basis.get(part, "unknown"), claim.basis.get(part, "unknown")))
        or stated[0] != stated[1]
    )
    if unlike:
        return ClaimVerdict("not comparable", None, None, unlike)
    low = -math.inf if claim.sense == "at most" else claim.value - claim.tolerance
    high = math.inf if claim.sense == "at least" else claim.value + claim.tolerance
    verdict: Conformity = "cannot tell"
    if measured - expanded > high:
        verdict = "proved over"
    elif measured + expanded < low:
        verdict = "proved under"
    elif low <= measured - expanded and measured + expanded <= high:
        verdict = "proved within"
    difference = measured - claim.value
    return ClaimVerdict(verdict, difference, 100.0 * difference / claim.value, ())
