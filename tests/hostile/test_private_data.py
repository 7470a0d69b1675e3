"""Body, rider weight and balance of a buyer stand on no page, in no link and in no log unless asked."""

import json
import re
import struct
from pathlib import Path

import pytest

import worlds
from spindlewise.answer.answer_log import append_answer, to_log
from spindlewise.answer.ranking import rank
from spindlewise.buyer.buyer import BalanceRange, Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.shelf import Shelf
from spindlewise.render.fragment import fragment
from spindlewise.site.build import publish, publish_single

DIGITS = re.compile(
    r"(?<![\d.,-])(?:1[ ,]?771|1\.771|177[.]1|437|431|93[.]7|94(?=\s?kg)|41[.]3|43[.]9)(?![\d.])"
)


def asker(**more: object) -> Buyer:
    return worlds.buyer(
        needs={"rider_mass_kg": 93.7},
        body={"height_mm": 1771.0, "thigh_mm": 437.0, "shank_mm": 431.0, "foot_pitch_bottom_deg": 17.0},
        riding={
            "balance_left_pct": {"low": 41.3, "high": 43.9},
            "hours_per_year": 300.0,
            "years": 3.0,
            "climb": {"length_m": 9000.0, "gradient_pct": 7.0, "power_w": 240.0},
        },
        bike={"crank_mm": 172.5, "saddle_height_mm": 745.0, "seat_tube_deg": 73.5, "saddle_setback_mm": 60.0},
        present_pedals="stone",
        **more,
    )


def catalog_of() -> Catalog:
    """Four pedals, one of which does not carry the rider."""
    limit = {"rider_limit_kg": (worlds.seen(90.0, grade="claimed"),)}
    doubled = (worlds.link("ANT+", power="one side doubled"),)
    products = [
        worlds.product("heron"),
        worlds.product("siskin", limit),
        worlds.product("wren", links=doubled),
        worlds.plain("stone"),
    ]
    return worlds.catalog(products, [worlds.price(p.id, 400 + n) for n, p in enumerate(products)])


def told(folder: Path, buyer: Buyer) -> dict[str, list[str]]:
    """Which files of the site tell which of the secrets."""
    publish(catalog_of(), {"tester": buyer}, worlds.DAY, folder)
    found = {}
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            words = DIGITS.findall(path.read_text("utf-8"))
            if words and "tester" in path.read_text("utf-8"):
                found[path.name] = words
    return found


def test_no_page_shows_them_unless_the_buyer_says_shown(tmp_path: Path) -> None:
    assert told(tmp_path / "kept", asker()) == {}
    shown = told(tmp_path / "shown", asker(private="shown"))
    assert "94" in shown["tester.html"]
    page = (tmp_path / "kept" / "buyers" / "tester.html").read_text("utf-8")
    assert "kept private" in page
    assert "failed the rider&#39;s weight" in page  # siskin is out all the same


def test_a_site_is_the_same_to_the_byte_whatever_is_kept_private(tmp_path: Path) -> None:
    """Nothing can be read back from pages that come out alike: as files, as one file, and in its manifest."""
    tall = asker()
    small = tall.model_copy(
        update={
            "needs": tall.needs.model_copy(update={"rider_mass_kg": 95.2}),  # keeps the same pedal out
            "body": tall.body.model_copy(update={"height_mm": 1580.0, "thigh_mm": 390.0, "shank_mm": 371.0}),
            "riding": tall.riding.model_copy(update={"balance_left_pct": BalanceRange(low=55.5, high=57.5)}),
        }
    )
    made = []
    for name, buyer in (("tall", tall), ("small", small)):
        told(tmp_path / name, buyer)
        publish_single(catalog_of(), {"tester": buyer}, worlds.DAY, tmp_path / f"{name}.html")
        files = sorted(path for path in (tmp_path / name).rglob("*") if path.is_file())
        made.append({path.relative_to(tmp_path / name): path.read_bytes() for path in files})
    assert made[0] == made[1]
    assert (tmp_path / "tall.html").read_bytes() == (tmp_path / "small.html").read_bytes()
    told(tmp_path / "shown", small.model_copy(update={"private": "shown"}))
    assert (tmp_path / "shown" / "buyers" / "tester.html").read_bytes() not in made[0].values()


def test_no_link_has_them_unless_asked() -> None:
    assert DIGITS.findall(fragment(asker())) == []
    assert {"93.7", "41.3", "43.9"} <= set(
        DIGITS.findall(fragment(asker(), with_private=True).replace("-", " "))
    )


@pytest.mark.parametrize("private", ["kept", "shown"])
def test_no_log_has_them_unless_asked(tmp_path: Path, private: str) -> None:
    desk = worlds.desk(
        [worlds.product("heron"), worlds.plain("stone")],
        [worlds.price(name, 500) for name in ("heron", "stone")],
    )
    ranking = rank(desk, asker(private=private))
    append_answer(tmp_path / "a.jsonl", to_log(desk, ranking))
    record = json.loads((tmp_path / "a.jsonl").read_text())
    del record["digest"], record["seal"]  # hexadecimal holds any digits
    assert DIGITS.findall(json.dumps(record)) == []
    append_answer(tmp_path / "b.jsonl", to_log(desk, ranking, keep_private=True))
    assert "93.7" in (tmp_path / "b.jsonl").read_text()


def test_what_a_publish_keeps_for_the_next_holds_none_of_it(tmp_path: Path) -> None:
    """Neither as text nor as a packed number, in whichever order its bytes stand."""
    shelf = Shelf(tmp_path / "shelf")
    publish(catalog_of(), {"tester": asker()}, worlds.DAY, tmp_path / "site", shelf=shelf)
    [kept] = (path.read_bytes() for path in shelf.folder.iterdir())
    assert b"tester" in kept
    assert b"heron" in kept
    for secret in (93.7, 1771.0, 437.0, 431.0, 41.3, 43.9, 745.0):
        # whole numbers of three digits stand in any digest
        forms = (repr(secret).encode(), struct.pack(">d", secret), struct.pack("<d", secret))
        assert not any(form in kept for form in forms), secret
