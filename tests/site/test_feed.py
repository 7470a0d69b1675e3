import xml.etree.ElementTree as ET
from datetime import date

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.site.change_events import Event
from spindlewise.site.changes_page import ChangedDay, changes_page
from spindlewise.site.feed import ATOM, atom_feed, entry_title, move_words
from spindlewise.site.frame import frame_of
from spindlewise.site.pick_moves import Move

NS = {"a": ATOM}


def feed(catalog, buyers, day):
    return atom_feed(frame_of(Desk(catalog, day), buyers), changes_page(catalog, buyers, day))


def test_the_demo_s_feed_has_what_atom_asks_for(site):
    tree = ET.fromstring((site.folder / "changes.xml").read_bytes())
    entries = tree.findall("a:entry", NS)
    assert len(entries) > 20
    ids = [e.findtext("a:id", namespaces=NS) for e in (tree, *entries)]
    assert len(set(ids)) == len(ids)
    assert all(text.startswith("urn:uuid:") for text in ids)
    for part in (tree, *entries):
        assert part.findtext("a:title", namespaces=NS)
        assert part.findtext("a:updated", namespaces=NS).endswith("T00:00:00Z")
    assert tree.findtext("a:author/a:name", namespaces=NS)
    assert tree.findtext("a:updated", namespaces=NS) == entries[0].findtext("a:updated", namespaces=NS)
    assert "invented" in tree.findtext("a:subtitle", namespaces=NS)


def test_every_entry_leads_to_its_day(site):
    tree = ET.fromstring((site.folder / "changes.xml").read_bytes())
    page = (site.folder / "changes.html").read_text()
    for link in tree.findall("a:entry/a:link", NS):
        name, _, anchor = link.get("href").partition("#")
        assert name == "changes.html"
        assert f'id="{anchor}"' in page


def test_ids_stay_from_day_to_day():
    rows = [worlds.price("heron", 500), worlds.price("heron", 450, date=date(2026, 10, 9), line=3)]
    catalog = worlds.catalog([worlds.product("heron")], rows)
    one, two = (ET.fromstring(feed(catalog, {}, day)) for day in (worlds.DAY, date(2026, 11, 21)))
    assert [e.text for e in one.iter(f"{{{ATOM}}}id")] == [e.text for e in two.iter(f"{{{ATOM}}}id")]


def test_hostile_words_stay_words_and_nothing_is_a_feed_too():
    rows = [
        worlds.price("heron", 500, seller="<script>&"),
        worlds.price("heron", 450, line=3, seller="<script>&"),
    ]
    catalog = worlds.catalog([worlds.product("heron")], rows)
    tree = ET.fromstring(feed(catalog, {}, worlds.DAY))
    assert "<script>&" in tree.findtext("a:entry/a:content", namespaces=NS)
    empty = ET.fromstring(feed(worlds.catalog([worlds.product("heron")], []), {}, worlds.DAY))
    assert empty.findtext("a:updated", namespaces=NS) == "2026-08-22T00:00:00Z"


def test_titles_and_sentences():
    fall = Event(worlds.DAY, "price fall", "heron", "EUR 1")
    moves = (Move("a", "heron", None), Move("b", None, "heron"))
    assert entry_title(ChangedDay(worlds.DAY, (fall, fall), ())) == "2026-11-20: price fall"
    assert entry_title(ChangedDay(worlds.DAY, (fall,), moves)).endswith("; another pick for 2 buyers")
    assert entry_title(ChangedDay(worlds.DAY, (), moves[:1])) == (
        "2026-11-20: nothing that is listed; another pick for 1 buyer"
    )
    assert move_words("Robin", "heron", None, {"heron": "Heron"}) == (
        "Robin: now no recommendation in place of the Heron."
    )
