"""What changed as an Atom feed (RFC 4287): an entry a day, with lasting ids."""

import uuid
import xml.etree.ElementTree as ET
from collections.abc import Mapping
from datetime import date

from spindlewise.site.change_events import Event
from spindlewise.site.changes_page import ChangedDay, ChangesPage
from spindlewise.site.frame import Frame

ATOM = "http://www.w3.org/2005/Atom"
PAGE, FEED = "changes.html", "changes.xml"


def atom_feed(frame: Frame, page: ChangesPage) -> bytes:
    """The feed as its file; its addresses are relative, since nobody knows here where the site will stand."""
    feed = ET.Element("feed", {"xmlns": ATOM, "xml:lang": "en"})
    newest = page.days[0].day if page.days else page.since
    _add(feed, "id", _urn(frame.title))
    _add(feed, "title", f"{frame.title}: what changed")
    if frame.invented:
        _add(feed, "subtitle", frame.invented)
    _add(feed, "updated", _instant(newest))
    _add(ET.SubElement(feed, "author"), "name", frame.title)
    ET.SubElement(feed, "link", {"rel": "self", "type": "application/atom+xml", "href": FEED})
    ET.SubElement(feed, "link", {"rel": "alternate", "type": "text/html", "href": PAGE})
    for day in page.days:
        _entry(feed, frame, day)
    ET.indent(feed)
    text = ET.tostring(feed, encoding="unicode")
    return f'<?xml version="1.0" encoding="utf-8"?>\n{text}\n'.encode()


def _entry(feed: ET.Element, frame: Frame, day: ChangedDay) -> None:
    entry = ET.SubElement(feed, "entry")
    _add(entry, "id", _urn(f"{frame.title}\n{day.day}"))
    _add(entry, "title", entry_title(day))
    _add(entry, "updated", _instant(day.day))
    ET.SubElement(entry, "link", {"rel": "alternate", "type": "text/html", "href": f"{PAGE}#{day.anchor}"})
    names = {name: told for name, told, _ in frame.buyers}
    lines = [_event_words(event, frame) for event in day.events]
    lines += [move_words(names[m.buyer], m.before, m.after, frame.products) for m in day.moves]
    content = _add(entry, "content", "\n".join(lines))
    content.set("type", "text")


def _event_words(event: Event, frame: Frame) -> str:
    of = f"{frame.products[event.product]}, " if event.product else ""
    return f"{event.kind}: {of}{event.said}"


def entry_title(day: ChangedDay) -> str:
    """A day in a line: its kinds of change, and for how many buyers the pick is another."""
    kinds = ", ".join(dict.fromkeys(event.kind for event in day.events))
    said = f"{day.day}: {kinds or 'nothing that is listed'}"
    if not day.moves:
        return said
    return f"{said}; another pick for {len(day.moves)} {'buyer' if len(day.moves) == 1 else 'buyers'}"


def move_words(buyer: str, before: str | None, after: str | None, products: Mapping[str, str]) -> str:
    """What became of a buyer's pick, in a sentence.

    >>> move_words("Robin", "a", "b", {"a": "Heron", "b": "Siskin"})
    'Robin: now the Siskin in place of the Heron.'
    """
    now, was = (f"the {products[name]}" if name else "no recommendation" for name in (after, before))
    return f"{buyer}: now {now} in place of {was}."


def _add(parent: ET.Element, tag: str, text: str) -> ET.Element:
    child = ET.SubElement(parent, tag)
    child.text = text
    return child


def _urn(text: str) -> str:
    return uuid.uuid5(uuid.NAMESPACE_OID, f"spindlewise {text}").urn


def _instant(day: date) -> str:
    return f"{day.isoformat()}T00:00:00Z"
