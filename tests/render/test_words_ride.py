"""The report of a ride: what must be said is said."""

from dataclasses import replace

import pytest

from small_answers import desk
from small_rides import FIRST, demo, report
from spindlewise.answer.bench_ride import RideReport
from spindlewise.answer.bench_session import RideSession, product_sessions, ride_sessions
from spindlewise.bench.synthetic_ride import Meter
from spindlewise.render.as_markdown import as_markdown
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Heading, Paragraph
from spindlewise.render.words_ride import NOTHING_SCORED, not_noted_sentences, ride_blocks


def blocks(found: RideReport):
    sessions = ride_sessions(found)
    records = tuple(
        product_sessions(s.row.product, [s.row], desk().day) for s in sessions if isinstance(s, RideSession)
    )
    return ride_blocks(desk().catalog, found, sessions, records)


def said(found: RideReport) -> str:
    return " ".join(as_text(blocks(found)).split())


def test_the_parts_stand_in_their_order() -> None:
    heads = [block.text for block in blocks(demo()) if isinstance(block, Heading)]
    assert heads[0] == "Forty minutes with pedals, spider and hub at once"
    assert heads[1:3] == ["In short", "The recordings"]
    assert heads[-4:] == [
        "Three meters, no truth",
        "Segments",
        "What nobody noted",
        "What this says of a product",
    ]


@pytest.mark.parametrize("name", [None, FIRST])
def test_nothing_is_scored_from_one_ride_and_another_unit_may_differ(name: str | None) -> None:
    found = demo(name) if name else demo()
    assert Paragraph(NOTHING_SCORED) in blocks(found)
    assert "another unit of the same product may differ" in NOTHING_SCORED


def test_a_generated_ride_says_so() -> None:
    assert "Drawn by a program: nothing of it was measured." in said(demo())
    measured = replace(demo(), sheet=demo().sheet.model_copy(update={"made": "measured"}))
    assert "Drawn by a program" not in said(measured)


def test_a_ride_that_counts_for_nothing_says_so_first() -> None:
    caution = blocks(demo(FIRST))[2]
    assert isinstance(caution, Paragraph)
    assert caution.tone == "caution"
    assert caution.text.startswith(
        "This ride is a bedding-in ride and counts for nothing: the first half hour"
    )
    void = {"state": "void", "because": "a loose cleat"}
    told = said(report(Meter("pedals"), Meter("spider"), standing=void))
    assert "This ride is void and counts for nothing: a loose cleat." in told


def test_what_the_sheet_lacks_is_named() -> None:
    told = said(demo())
    assert "- Of spider: the firmware." in told
    assert "- Of hub: how far it had been ridden, the firmware, the battery and whether a zero" in told
    assert "The SHA-256 of" not in told
    assert "What nobody noted" not in said(replace(demo(), not_noted=()))


def test_a_digest_that_the_sheet_lacks_is_given() -> None:
    lacking = replace(demo(), not_noted=("crank_mm", "meters.hub.recording.sha256"))
    digest = next(each.sha256 for each in demo().recordings if each.name == "hub")
    assert not_noted_sentences(lacking) == (
        "Of the ride: the cranks on the bike.",
        "Of hub: the SHA-256 of the recording.",
        f"The SHA-256 of hub.csv is {digest}.",
    )


def test_what_could_not_be_read_is_named_and_the_clock_is_told() -> None:
    lost = replace(demo(), unread=("spider",), reference="pedals")
    told = said(lost)
    assert "Could not be read: spider. The others are compared." in told
    assert "the clock is that of pedals, and percentages are of the mean of both" in told


def test_without_two_recordings_there_is_nothing_to_compare() -> None:
    told = said(report(Meter("pedals")))
    assert "There are not two recordings to compare." in told


def test_markdown_has_its_tables() -> None:
    text = as_markdown(blocks(demo()))
    assert "| Meter | Rows | Lag | Drift |" in text
