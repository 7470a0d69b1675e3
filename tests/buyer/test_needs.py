import pytest
from pydantic import ValidationError

from spindlewise.buyer.needs import Needs, ShoeNeed


def test_nothing_is_needed_but_a_power_pedal() -> None:
    needs = Needs()
    assert (needs.kind, needs.reading, needs.balance, needs.states) == (
        "power pedal",
        "any",
        "not needed",
        "any",
    )
    assert needs.rider_mass_kg == needs.shoes == needs.water == "not stated"


@pytest.mark.parametrize("code", ["IPX7", "IP67", "IP5X", "IPX0", "IP00", "not stated"])
def test_a_least_ingress_code(code: str) -> None:
    assert Needs(water=code).water == code


@pytest.mark.parametrize(
    ("code", "told"),
    [
        ("IPXX", r"'IPXX' is not an ingress code \| write it as IPX7 or IP67"),
        ("ipx7", "is not an ingress code"),
        ("IP7", "is not an ingress code"),
        ("IP77", "is not an ingress code"),
        ("IPX7\n", "is not an ingress code"),
        ("IPX5/IPX7", r"'IPX5/IPX7' names two codes \| write the one that must be met"),
    ],
)
def test_what_is_no_least_ingress_code(code: str, told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        Needs(water=code)


def test_shoes_take_a_drilling_and_any_pattern_or_some() -> None:
    assert ShoeNeed(bolts="two-bolt").patterns == "any"
    assert ShoeNeed(bolts="three-bolt", patterns=("Keel",)).patterns == ("Keel",)
    for patterns in ((), ("",), ("Ke\nel",)):
        with pytest.raises(ValidationError):
            ShoeNeed(bolts="three-bolt", patterns=patterns)
    with pytest.raises(ValidationError):
        ShoeNeed.model_validate({"bolts": "none"})


@pytest.mark.parametrize(
    "key", ["rider_mass_kg", "weight_g_at_most", "running_hours_at_least", "warranty_years_at_least"]
)
def test_a_need_in_figures_is_above_nothing(key: str) -> None:
    assert Needs.model_validate({key: 1.5})
    for figure in (0.0, -1.0, float("nan"), 1e9, "unknown"):
        with pytest.raises(ValidationError):
            Needs.model_validate({key: figure})
