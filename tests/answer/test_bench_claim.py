"""A weighing held to the claim that speaks of the same thing."""

from datetime import date
from typing import Any

import pytest

import worlds
from spindlewise.answer.bench_claim import basis_of, hold_to_claim
from spindlewise.bench.weighing import Scale, Weighing, WeightBasis, weigh

SCALE = Scale("counter scale", 1.0)


def weighed(grams: float, *basis: str) -> Weighing:
    return weigh([grams] * 5, scale=SCALE, basis=WeightBasis(*(basis or ("pair", "in", "off"))))


def claim(grams: Any, day: str = "2025-01-01", batteries: str = "in", **more: Any) -> dict[str, Any]:
    return {
        "grade": "claimed",
        "date": date.fromisoformat(day),
        "source": f"sheet of {day}",
        "value": grams,
        "basis": {"count": "pair", "batteries": batteries, "cleats": "off"},
    } | more


def product(*claims: dict[str, Any]) -> Any:
    return worlds.product("some-pedal", {"weight_g": claims})


@pytest.mark.parametrize(
    ("grams", "verdict"), [(404, "proved over"), (396, "proved within"), (398, "cannot tell")]
)
def test_the_verdict_is_that_of_the_decision_rule(grams: float, verdict: str) -> None:
    held = hold_to_claim(weighed(grams), product(claim(398)), worlds.DAY)
    assert held is not None
    assert held.verdict.verdict == verdict
    assert (held.claimed_g, held.tolerance_g, held.basis) == (398, None, "pair, batteries in, cleats off")


def test_a_stated_tolerance_is_the_makers_to_have() -> None:
    held = hold_to_claim(weighed(404), product(claim(398, plus_minus=8)), worlds.DAY)
    assert held is not None
    assert (held.tolerance_g, held.verdict.verdict) == (8, "proved within")


def test_the_newest_claim_on_a_like_basis_is_held_to() -> None:
    pedal = product(
        claim(380, "2026-01-01", "out"), claim(398, "2025-05-01"), claim(401, "2025-01-01"), claim("unknown")
    )
    held = hold_to_claim(weighed(404), pedal, worlds.DAY)
    assert held is not None
    assert held.claimed_g == 398
    earlier = hold_to_claim(weighed(404), pedal, date(2025, 2, 1))
    assert earlier is not None
    assert earlier.claimed_g == 401


def test_no_claim_on_a_like_basis_is_not_comparable_and_says_why() -> None:
    held = hold_to_claim(weighed(404, "pair", "in", "on"), product(claim(380, batteries="out")), worlds.DAY)
    assert held is not None
    assert (held.verdict.verdict, held.verdict.unlike) == ("not comparable", ("batteries", "cleats"))


def test_without_a_claim_or_a_product_there_is_nothing_to_hold_it_to() -> None:
    assert hold_to_claim(weighed(404), None, worlds.DAY) is None
    assert hold_to_claim(weighed(404), product(claim(398)), date(2024, 1, 1)) is None
    assert hold_to_claim(weighed(404), product(claim("unknown")), worlds.DAY) is None
    assert hold_to_claim(weighed(404), worlds.product("pp", {"weight_g": "unknown"}), worlds.DAY) is None


def test_the_basis_has_the_catalogs_keys() -> None:
    assert basis_of(weighed(404)) == {"count": "pair", "batteries": "in", "cleats": "off"}
