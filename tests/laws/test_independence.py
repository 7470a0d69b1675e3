"""Laws of independence: who gave, lent or pays moves nothing; a safety notice shows whatever is asked."""

from dataclasses import replace
from datetime import date
from typing import Any, get_args

from hypothesis import given, settings
from hypothesis import strategies as st

import worlds
from command_line import SMALL
from spindlewise.answer.brief import brief
from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import reply_to
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.product import Disclosure, SafetyNotice
from spindlewise.cli.answer import said
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Section
from spindlewise.render.json_reply import reply_json
from spindlewise.render.naming import naming
from spindlewise.render.rank_sheet import rank_sheet
from spindlewise.render.shortened import TooShort, shortened
from spindlewise.render.words_brief import brief_text
from spindlewise.render.words_rank import rank_blocks
from spindlewise.render.words_reply import reply_sections
from spindlewise.site.region_table import region_table

WORDS = st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), min_size=1, max_size=20)
"""A source may say anything: that somebody was paid, too."""


def any_disclosure() -> st.SearchStrategy[Disclosure]:
    """Every field of the model: each of its words where it has a list of them, any text where it has none."""
    fields: dict[str, st.SearchStrategy[Any]] = {}
    for name, field in Disclosure.model_fields.items():
        listed = get_args(field.annotation)
        fields[name] = st.sampled_from(listed) if listed else WORDS
    return st.builds(Disclosure, **fields)


def test_all_fields_of_a_disclosure_are_varied() -> None:
    assert set(Disclosure.model_fields) == {"unit", "source", "returned", "commission"}
    found = {name: len(get_args(field.annotation)) for name, field in Disclosure.model_fields.items()}
    assert found == {"unit": 5, "source": 0, "returned": 4, "commission": 4}


CATALOG, PROBLEMS = open_catalog(SMALL)
assert CATALOG is not None, PROBLEMS
NAMES = sorted(CATALOG.products)
POINTS = st.fixed_dictionaries(
    {
        name: st.integers(0, 50)
        for name in ("price", "weight", "reading_uncertainty", "running_time", "detail")
    }
).filter(lambda points: any(points.values()))


def without_disclosure(value: Any) -> Any:
    if isinstance(value, dict):
        return {k: without_disclosure(v) for k, v in value.items() if "disclos" not in k}
    return [without_disclosure(v) for v in value] if isinstance(value, list) else value


def everything(disclosures: dict[str, Disclosure], points: dict[str, int]) -> list[Any]:
    """All that is told of rank, score, price, ladder and how sure it is, less the disclosure itself."""
    products = {
        name: product.model_copy(update={"disclosure": disclosures.get(name, product.disclosure)})
        for name, product in CATALOG.products.items()
    }
    desk = Desk(replace(CATALOG, products=products))
    buyer = worlds.buyer(points, present_pedals="lommerside-lethery")
    reply = reply_to(desk, buyer)
    return [
        without_disclosure(reply_json(desk.catalog, reply)),
        rank_sheet(desk.catalog, reply.ranking, reply.break_evens),
        as_text(rank_blocks(desk.catalog, reply.ranking, reply.break_evens)),
        [(row.product.id, row.place, row.score, row.price) for row in region_table(desk, "EU").ranked],
    ]


@settings(deadline=None, max_examples=12)
@given(st.fixed_dictionaries({name: any_disclosure() for name in NAMES}), POINTS)
def test_who_gave_lent_or_pays_moves_nothing(
    disclosures: dict[str, Disclosure], points: dict[str, int]
) -> None:
    assert everything(disclosures, points) == everything({}, points)


NOTICE = {
    "date": date(2026, 5, 1),
    "ended": "none",
    "what": "The spindle may crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def plainly(text: str) -> str:
    """The text without line breaks and without what Markdown puts before its signs."""
    return " ".join(text.replace("> ", "").split()).replace("\\", "")


def shortest(sections: tuple[Section, ...]) -> str:
    """The answer cut down as far as it goes."""
    try:
        return shortened(sections, as_text, 1)
    except TooShort as least:
        return shortened(sections, as_text, least.needed)


WARNED = st.lists(st.sampled_from(NAMES), min_size=1, max_size=4, unique=True)
NEEDS = st.fixed_dictionaries(
    {},
    optional={
        "rider_mass_kg": st.sampled_from([60.0, 82.0, 118.0]),
        "reading": st.just("both sides"),
        "balance": st.just("needed"),
        "water": st.sampled_from(["IPX5", "IPX7"]),
        "weight_g_at_most": st.floats(250, 600),
        "running_hours_at_least": st.floats(1, 200),
        "warranty_years_at_least": st.floats(1, 5),
        "states": st.just(("current",)),
        "kind": st.sampled_from(["plain pedal", "any"]),
    },
)
ASKED = st.fixed_dictionaries(
    {"needs": NEEDS, "present_pedals": st.sampled_from([*NAMES, "none", "unknown"])},
    optional={"budget": st.integers(100, 1500)},
)


@settings(deadline=None, max_examples=30)
@given(WARNED, POINTS, ASKED)
def test_no_need_and_no_weight_hides_a_safety_notice(
    warned: list[str], points: dict[str, int], asked: dict[str, Any]
) -> None:
    """What stands under one is not picked; where it is placed or ridden, every form of the answer says so."""
    notices = (SafetyNotice.model_validate(NOTICE),)
    products = {
        name: product.model_copy(update={"safety_notices": notices}) if name in warned else product
        for name, product in CATALOG.products.items()
    }
    desk = Desk(replace(CATALOG, products=products))
    buyer = worlds.buyer(points, **asked)
    reply, short = reply_to(desk, buyer), brief(desk, buyer)
    assert reply.pick is None or reply.pick.product not in warned
    placed = [each.product for each in reply.ranking.placed]
    held = [each.held_back for each in reply.ranking.placed]
    assert held == sorted(held)  # all of them behind all others
    assert [name for name, back in zip(placed, held, strict=True) if back and name in warned] == [
        name for name in placed if name in warned
    ]
    names = naming(desk.catalog)
    for name in warned:
        if name in placed or name == buyer.present_pedals:
            told = f"{names.product(name)}: The spindle may crack. Stop riding."
            for style in ("text", "markdown"):
                assert told in plainly(said(desk.catalog, reply, style))
            assert told in plainly(as_text(rank_blocks(desk.catalog, reply.ranking)))
            assert told in plainly(shortest(reply_sections(desk.catalog, reply)))
            assert told in plainly(brief_text(desk.catalog, short, names))
