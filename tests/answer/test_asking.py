from decimal import Decimal
from pathlib import Path

import pytest
from pydantic import ValidationError

import worlds
from command_line import SMALL, copied
from spindlewise.answer.asking import USUAL_POINTS, Asked, ask, open_buyers, stated_weights
from spindlewise.answer.stated import receiver_from
from spindlewise.catalog.opening import open_catalog

CATALOG = worlds.catalog([worlds.product("aa")], [worlds.price("aa", 500)])
BASE = worlds.buyer(budget=700, needs={"water": "IPX7", "reading": "any"})


def test_nothing_stated_asks_in_the_first_region_with_the_usual_weights() -> None:
    buyer = ask(CATALOG, Asked())
    assert (buyer.id, buyer.region, buyer.currency) == ("you", "EU", "EUR")
    assert buyer.weights.points == USUAL_POINTS
    assert buyer.budget_amount is None


def test_a_region_brings_its_currency_and_a_currency_may_differ() -> None:
    assert ask(CATALOG, Asked(region="JP")).currency == "JPY"
    assert ask(CATALOG, Asked(region="JP", currency="EUR")).currency == "EUR"
    assert ask(CATALOG, Asked(region="ZZ")).currency == "EUR"
    assert ask(CATALOG, Asked(region="ZZ", budget=Decimal(5)), BASE).currency == "EUR"


def test_nothing_stated_beside_a_buyer_changes_nothing() -> None:
    assert ask(CATALOG, Asked(), BASE) == BASE


def test_statements_override_the_buyers_own_and_keep_the_rest() -> None:
    asked = Asked(
        budget=Decimal("650.50"),
        receivers=(receiver_from("x:ANT+"),),
        order=("weight", "price"),
        rider_mass_kg=80.0,
        both_sides=True,
        present_pedals="aa",
    )
    buyer = ask(CATALOG, asked, BASE)
    assert buyer.budget_amount == Decimal("650.50")
    assert [r.name for r in buyer.receivers] == ["x"]
    assert buyer.weights.order == ("weight", "price")
    assert (buyer.needs.rider_mass_kg, buyer.needs.reading, buyer.needs.water) == (80.0, "both sides", "IPX7")
    assert (buyer.present_pedals, buyer.name) == ("aa", BASE.name)
    assert ask(CATALOG, Asked(rider_mass_kg=70.0)).needs.rider_mass_kg == 70.0


def test_a_budget_never_changes_its_currency_silently() -> None:
    with pytest.raises(ValueError, match="budget is in EUR; state one in USD too"):
        ask(CATALOG, Asked(region="US"), BASE)
    assert ask(CATALOG, Asked(region="US", budget=Decimal(800)), BASE).currency == "USD"
    assert ask(CATALOG, Asked(region="US"), worlds.buyer()).currency == "USD"


def test_weights_are_stated_one_way() -> None:
    with pytest.raises(ValueError, match="state them one way"):
        ask(CATALOG, Asked(points={"price": 1.0}, order=("price",)))
    assert stated_weights(Asked()) is None
    for wrong in (Asked(points={"price": 0.0}), Asked(order=("price", "ownership"))):
        with pytest.raises(ValueError, match=r"all weights are 0|same money twice"):
            stated_weights(wrong)


def test_present_pedals_are_in_the_catalog() -> None:
    with pytest.raises(ValueError, match="no product bb"):
        ask(CATALOG, Asked(present_pedals="bb"))
    assert ask(CATALOG, Asked(present_pedals="none")).present_pedals == "none"


def test_a_buyer_is_held_to_its_model() -> None:
    with pytest.raises(ValidationError):
        ask(CATALOG, Asked(rider_mass_kg=-1.0))


def test_buyers_open_in_order_of_id() -> None:
    buyers, problems = open_buyers(SMALL / "buyers")
    assert problems == []
    assert list(buyers) == sorted(buyers) == ["club-racer", "nothing-for-it", "phone-only"]


def test_no_folder_holds_no_buyers(tmp_path: Path) -> None:
    assert open_buyers(tmp_path / "none") == ({}, [])


def test_every_problem_of_every_buyer_is_told_with_its_place(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    catalog, _ = open_catalog(folder)
    texts = {
        "club-racer": ("id: club-racer", "id: other"),
        "nothing-for-it": ("budget: 200", "budget: -200"),
        "phone-only": ("region: EU", "region: EUX"),
    }
    for name, (old, new) in texts.items():
        path = folder / "buyers" / f"{name}.yaml"
        path.write_text(path.read_text("utf-8").replace(old, new, 1), "utf-8")
    buyers, problems = open_buyers(folder / "buyers", catalog)
    assert list(buyers) == ["phone-only"]
    assert problems[0].rule == "buyer-file-name"
    assert problems[-1].rule == "unknown-region"
    assert problems[-1].place is not None
    assert (problems[-1].place.line, problems[-1].place.column) == (6, 9)
    assert len(problems) == 3
