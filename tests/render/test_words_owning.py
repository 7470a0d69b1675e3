from dataclasses import replace
from datetime import date

import pytest

import worlds
from small_answers import desk, reply
from spindlewise.answer.reply import reply_to
from spindlewise.render.blocks import Bullets, Paragraph
from spindlewise.render.words_owning import CHARGING, owned_words, owning_blocks

SPARE = {
    "date": date(2026, 1, 1),
    "region": "EU",
    "currency": "EUR",
    "amount": 4.0,
    "tax": "in",
    "source": "shop",
}
CELLS = {"type": "CR2032", "count": 2, "cell_weight_g": 3.0, "spare_prices": (SPARE,)}
CHARGED = {
    "type": "built-in",
    "count": 2,
    "cell_weight_g": "not applicable",
    "spare_prices": "not applicable",
}


def told(years: float = 2.0, hours: float = 200.0, **changes: object) -> str:
    heron = worlds.product("heron", **changes)
    a_desk = worlds.desk([heron], [worlds.price("heron", 500)])
    buyer = worlds.buyer(riding={"years": years, "hours_per_year": hours})
    return owned_words("Heron", a_desk.ownership(buyer)["heron"], "EUR")


def test_price_and_cells_by_year_and_by_hour() -> None:
    assert told(battery=CELLS) == (
        "Heron: EUR 524.00 (EUR 262.00 a year, EUR 1.31 an hour): purchase EUR 500.00 and "
        "spare cells 6 times EUR 4.00."
    )


def test_once_and_never_are_said_so() -> None:
    assert "spare cells once EUR 4.00" in told(1.0, 100.0, battery=CELLS)
    assert told(1.0, 50.0, battery=CELLS).endswith("purchase EUR 500.00. Not due in that time: spare cells.")


def test_what_nobody_knows_makes_it_a_least() -> None:
    text = told(battery="unknown")
    assert text.startswith("Heron: at least EUR 500.00 (")
    assert text.endswith("purchase EUR 500.00. Not known, and not counted: batteries.")


def test_charging_is_said_once_to_be_left_out() -> None:
    def said(battery: object) -> list[object]:
        products = [worlds.product(name, battery=battery) for name in ("heron", "siskin")]
        a_desk = worlds.desk(products, [worlds.price(p.id, 500) for p in products])
        buyer = worlds.buyer(riding={"years": 2.0, "hours_per_year": 200.0})
        return list(owning_blocks(a_desk.catalog, reply_to(a_desk, buyer)))

    assert said(CHARGED).count(Paragraph(CHARGING, "quiet")) == 1
    assert Paragraph(CHARGING, "quiet") not in said(CELLS)


def test_the_account_heads_with_years_and_hours() -> None:
    _, text, items, *_ = owning_blocks(desk().catalog, reply())
    assert isinstance(text, Paragraph)
    assert text.text == (
        "Over 4 years at 350 hours a year, nothing counted for what it fetches afterwards. "
        "It can be weighed in place of the price, never beside it."
    )
    assert isinstance(items, Bullets)
    assert len(items.items) == len(reply().owned) == 4
    assert owning_blocks(desk().catalog, replace(reply(), owned=())) == ()


@pytest.mark.parametrize(
    ("riding", "stood_in"), [({"years": 2.0}, "hours"), ({"hours_per_year": 200.0}, "years")]
)
def test_what_stands_in_is_said_to_be_assumed(riding: dict[str, float], stood_in: str) -> None:
    a_desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
    found = reply_to(a_desk, worlds.buyer({"ownership": 1}, riding=riding))
    _, text, _ = owning_blocks(a_desk.catalog, found)
    assert isinstance(text, Paragraph)
    assert f"(the {stood_in} are assumed, since none are stated)" in text.text
    assert text.text.endswith("It is weighed in place of the bare price.")
