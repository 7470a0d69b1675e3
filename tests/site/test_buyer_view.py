import worlds
from spindlewise.answer.reply import reply_to
from spindlewise.render.blocks import Table
from spindlewise.site.buyer_view import buyer_view


def view(**changes):
    products = [worlds.product("heron"), worlds.product("siskin"), worlds.plain("stone")]
    desk = worlds.desk(products, [worlds.price("heron", 500), worlds.price("siskin", 450)])
    return buyer_view(desk, reply_to(desk, worlds.buyer(**changes)))


def test_weights_add_up_and_head_the_columns():
    found = view()
    assert sum(share for _, _, share, _ in found.weights) == 100
    assert [cell.criterion for cell in found.places[0].cells] == ["weight", "reading_uncertainty"]
    assert [row.placed.product for row in found.places] == ["siskin", "heron"]


def test_every_part_of_the_reply_is_on_the_page_once():
    found = view(present_pedals="stone")
    assert found.opening.name == "pick"
    names = [section.name for section in found.rest]
    assert len(names) == len(set(names))
    assert {"disclosure", "cautions"} <= set(names)
    figures = next(section for section in found.rest if section.name == "figures")
    assert not any(isinstance(block, Table) for block in figures.blocks)


def test_what_was_stated_is_told_but_not_the_body():
    found = view(
        present_pedals="stone",
        budget=900,
        body={"height_mm": 1815.0},
        riding={"hours_per_year": 350.0, "years": 4.0},
        needs={
            "rider_mass_kg": 82.0,
            "shoes": {"bolts": "three-bolt"},
            "reading": "both sides",
            "balance": "needed",
            "water": "IPX6",
            "weight_g_at_most": 400.0,
            "running_hours_at_least": 20.0,
            "warranty_years_at_least": 2.0,
            "states": ("current",),
        },
    )
    stated = dict(found.stated)
    assert stated["Budget"] == "up to EUR 900.00"
    assert stated["Rides now"] == "Invented Works Stone"
    assert stated["Rides"] == "350 hours a year, for 4 years"
    assert stated["Must have"] == (
        "a power pedal; both sides measured and shown; balance shown; protection of IPX6 or better; "
        "at most 400 g; at least 20 h of running time; at least 2 years of warranty; "
        "current in the maker's range"
    )
    assert "1815" not in " ".join(stated.values())


def test_what_was_not_stated_is_said_so():
    stated = dict(view(receivers=(), needs={"kind": "any"}).stated)
    assert stated["Budget"] == "no limit"
    assert stated["Records with"] == "not stated; the best case is taken"
    assert "Must have" not in stated
    assert "Rides" not in stated


def test_the_page_for_weighing_oneself_is_asked_the_same_question_without_what_is_private():
    found = view(needs={"rider_mass_kg": 82.0}, riding={"balance_left_pct": {"low": 47.0, "high": 49.0}})
    assert found.weigh.startswith("weigh.html#v=1&region=EU&points=price:40")
    assert "mass" not in found.weigh
    assert "left" not in found.weigh
    assert "weigh" not in [section.name for section in found.rest]
    assert view(currency="USD").weigh == ""
