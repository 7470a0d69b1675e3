"""Whether a claim holds."""

import pytest

from spindlewise.bench.conformity import Claim, conformity

BASIS = {"count": "pair", "batteries": "in", "cleats": "off"}


def verdict(measured: float, expanded: float, **claim: object) -> str:
    return conformity(measured, expanded, BASIS, Claim(398.0, BASIS, **claim)).verdict  # type: ignore[arg-type]


def test_398_grams_claimed_404_weighed() -> None:
    """6 g over, 1.5 % (common practice, no source)."""
    found = conformity(404.0, 1.0, BASIS, Claim(398.0, BASIS))
    assert (found.verdict, found.difference) == ("proved over", 6.0)
    assert found.difference_pct is not None
    assert round(found.difference_pct, 1) == 1.5


@pytest.mark.parametrize(
    ("measured", "expanded", "says"),
    [
        (404.0, 6.0, "cannot tell"),
        (404.0, 5.9, "proved over"),
        (398.0, 1.0, "cannot tell"),
        (397.0, 1.0, "proved within"),
        (397.1, 1.0, "cannot tell"),
        (300.0, 1.0, "proved within"),
        (398.0, 0.0, "proved within"),
    ],
)
def test_a_weight_is_at_most_what_is_claimed(measured: float, expanded: float, says: str) -> None:
    assert verdict(measured, expanded) == says


@pytest.mark.parametrize(
    ("measured", "says"),
    [
        (407.5, "cannot tell"),
        (409.1, "proved over"),
        (387.0, "cannot tell"),
        (389.0, "proved within"),
        (386.9, "proved under"),
        (388.0, "cannot tell"),
    ],
)
def test_about_with_a_tolerance_has_two_limits(measured: float, says: str) -> None:
    assert verdict(measured, 1.0, tolerance=10.0, sense="about") == says


@pytest.mark.parametrize(
    ("measured", "says"),
    [(500.0, "proved within"), (399.0, "proved within"), (398.5, "cannot tell"), (396.0, "proved under")],
)
def test_hours_are_at_least_what_is_claimed(measured: float, says: str) -> None:
    assert verdict(measured, 1.0, sense="at least") == says


@pytest.mark.parametrize(
    ("measured", "claimed", "unlike"),
    [
        ({"batteries": "in"}, {"batteries": "out"}, ("batteries",)),
        ({"batteries": "in", "count": "pair"}, {"batteries": "in"}, ("count",)),
        ({"batteries": "in"}, {"batteries": "in", "cleats": "off"}, ("cleats",)),
        ({"batteries": "unknown"}, {"batteries": "unknown"}, ("batteries",)),
        (
            {"count": "pair", "batteries": "in"},
            {"count": "one pedal", "batteries": "out"},
            ("batteries", "count"),
        ),
    ],
)
def test_unlike_bases_are_refused_by_name(
    measured: dict[str, str], claimed: dict[str, str], unlike: tuple[str, ...]
) -> None:
    found = conformity(404.0, 1.0, measured, Claim(398.0, claimed))
    assert (found.verdict, found.unlike) == ("not comparable", unlike)
    assert (found.difference, found.difference_pct) == (None, None)


@pytest.mark.parametrize(
    ("value", "tolerance", "sense", "says"),
    [
        (0.0, 0.0, "at most", "the figure is above 0"),
        (float("inf"), 0.0, "at most", "the figure is above 0"),
        (398.0, -1.0, "at most", "tolerance 0 or more"),
        (398.0, 0.0, "below", "it is one of at most, at least, about"),
        (398.0, 0.0, "about", "'about' has a tolerance"),
    ],
)
def test_a_claim_that_claims_nothing_is_refused(
    value: float, tolerance: float, sense: str, says: str
) -> None:
    with pytest.raises(ValueError, match=says):
        Claim(value, BASIS, tolerance, sense)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("measured", "expanded"), [(float("nan"), 1.0), (404.0, -1.0), (404.0, float("inf"))]
)
def test_a_measurement_that_measures_nothing_is_refused(measured: float, expanded: float) -> None:
    with pytest.raises(ValueError, match="both are finite"):
        verdict(measured, expanded)
