from datetime import date

import pytest

import worlds
from spindlewise.site.comparison import region_comparison
from spindlewise.site.description import MOST_BYTES, description_text


def text_of(desk, region="EU"):
    return description_text(desk, region_comparison(desk, region).ranking).decode()


@pytest.mark.parametrize("region", ["eu", "us", "jp"])
def test_the_demo_fits_under_a_video_and_begins_with_who_gave_what(site, region):
    data = (site.folder / "data" / f"comparison-{region}.txt").read_bytes()
    assert 1500 < len(data) <= MOST_BYTES
    text = data.decode()
    assert text.startswith("DISCLOSURE\n")
    assert "INVENTED: Everything here is invented" in text
    assert "SAFETY NOTICE of 2026-10-02" in text


def many(count, **changes):
    names = [f"pedal-{n:03}" for n in range(count)]
    products = [worlds.product(name, **changes) for name in names]
    return worlds.desk(products, [worlds.price(name, 500, line=n + 2) for n, name in enumerate(names)])


def test_of_many_pedals_the_last_are_cut_and_never_the_disclosure():
    told = {**worlds.BOUGHT, "unit": "given by the maker", "commission": "link pays a commission"}
    text = text_of(many(300, disclosure=told))
    assert len(text.encode()) <= MOST_BYTES
    named = [line for line in text.splitlines() if "; score " in line]
    assert 20 < len(named) < 300
    assert f"{300 - len(named)} more did not fit here" in text
    disclosed = text.split("\n\n")[0]
    for line in named:
        name = line.partition(". ")[2].partition(":")[0]
        assert name in disclosed
    assert "Given by the maker, kept; commission: link pays a commission" in disclosed
    assert disclosed.endswith("None of it enters a score.")


@pytest.mark.parametrize("letter", ["x", "é", "\N{BICYCLE}"])
def test_whatever_the_catalog_says_of_itself_it_fits(letter):
    desk = many(3, maker=letter * 600)
    settings = desk.catalog.settings.model_copy(update={"title": letter * 600, "invented": letter * 600})
    from dataclasses import replace

    from spindlewise.answer.desk import Desk

    text = text_of(Desk(replace(desk.catalog, settings=settings), desk.day))
    assert text.startswith("DISCLOSURE\n")
    assert "INVENTED: " in text
    assert len(text.encode()) <= MOST_BYTES


def test_a_notice_stands_with_its_pedal_and_no_angle_bracket_is_left():
    notice = {
        "date": date(2026, 5, 1),
        "ended": "none",
        "what": "It may <crack>.",
        "action": "Stop.",
        "issued_by": "maker",
    }
    products = [
        worlds.product("heron", safety_notices=(notice,)),
        worlds.product("siskin", {"weight_g": "unknown"}),
    ]
    prices = [worlds.price("heron", 500), worlds.price("siskin", 450, valid_until=date(2026, 12, 1))]
    text = text_of(worlds.desk(products, prices))
    assert "Held back: Invented Works Heron: EUR 500.00" in text
    assert "SAFETY NOTICE of 2026-05-01: It may ‹crack›. Stop." in text
    assert "until 2026-12-01" in text
    assert "; weight unknown" in text
    assert not {"<", ">"} & set(text)


def test_a_real_catalog_is_not_called_invented_and_nothing_for_sale_is_said():
    desk = worlds.desk([worlds.product("heron")], [])
    from dataclasses import replace

    from spindlewise.answer.desk import Desk

    real = desk.catalog.settings.model_copy(update={"invented": "no"})
    text = text_of(Desk(replace(desk.catalog, settings=real), desk.day))
    assert "INVENTED" not in text
    assert "Nothing is for sale." in text
    assert "No pedal is named here." in text
