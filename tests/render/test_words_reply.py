import pytest

import worlds
from small_answers import desk, names, reply
from spindlewise.answer.reply import reply_to
from spindlewise.catalog.product import Disclosure
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Paragraph, blocks_of
from spindlewise.render.words_reply import disclosure_words, notice_words, reply_blocks, reply_sections


def text(name: str = "club-racer") -> str:
    return " ".join(as_text(reply_blocks(desk().catalog, reply(name))).split())


def test_what_must_never_be_cut_is_marked() -> None:
    kept = {section.name for section in reply_sections(desk().catalog, reply()) if section.keep}
    assert kept >= {"question", "pick", "notices", "disclosure", "cautions", "invented"}


def test_sections_make_up_the_whole() -> None:
    sections = reply_sections(desk().catalog, reply())
    assert blocks_of(sections) == reply_blocks(desk().catalog, reply())
    assert all(section.blocks for section in sections)
    assert len({section.name for section in sections}) == len(sections)


def test_notices_stand_above_the_reasons() -> None:
    order = [section.name for section in reply_sections(desk().catalog, reply())]
    assert order.index("notices") < order.index("why")


def test_each_follower_gains_and_loses_against_the_pick() -> None:
    assert "Tarnquell Liskar Duo (62.1, 1.6 points below): gains " in text()
    assert "against the pick" in text()


def test_a_need_that_nobody_could_check_stands_beside_the_pick() -> None:
    silent = worlds.product("heron", {**worlds.TRIED, "ingress": "unknown"})
    shop = worlds.desk([silent], [worlds.price("heron", 500)])
    sections = reply_sections(shop.catalog, reply_to(shop, worlds.buyer(needs={"water": "IPX5"})))
    (pick,) = (section for section in sections if section.name == "pick")
    said = Paragraph(
        "Not checked, since nobody knows: IPX5: ingress code unknown. Ask before you buy.", "caution"
    )
    assert said in pick.blocks


def test_those_behind_that_show_less_are_named() -> None:
    assert "What the others show, where it differs:" in text("phone-only")


def test_without_a_pick_near_misses_and_cautions_remain() -> None:
    said = text("nothing-for-it")
    assert "No recommendation: nothing in the catalog meets all the needs." in said
    assert "Near misses" in said
    assert "Before you ride" in said
    assert "What will you see" not in said


@pytest.mark.parametrize(
    ("unit", "returned", "commission", "said"),
    [
        (
            "bought at retail",
            "kept",
            "none",
            "the tested unit was bought at retail and kept; nobody is paid for this",
        ),
        (
            "lent by the maker",
            "returned",
            "link pays a commission",
            "lent by the maker and returned; a link to it pays",
        ),
        (
            "none tested",
            "not applicable",
            "unknown",
            "no unit was tested; whether anybody is paid for it is unknown",
        ),
    ],
)
def test_disclosures(unit: str, returned: str, commission: str, said: str) -> None:
    found = Disclosure.model_validate(
        {"unit": unit, "returned": returned, "commission": commission, "source": "a letter"}
    )
    assert said in disclosure_words("X", found)


def test_a_notice_says_what_is_wrong_and_what_to_do() -> None:
    name, notice = reply().notices[0]
    said = notice_words(names().product(name), notice)
    assert said.startswith("Yttervane Koldrane: A batch of spindles may crack")
    assert "Stop riding" in said


def test_the_leg_model_opens_its_mouth_only_with_body_data() -> None:
    assert "A model of the leg gives no second opinion" in text()


def test_no_word_of_ours_needs_a_glossary() -> None:
    for word in ("merit", "standing_", "break_even", "k = 2", ": None", " nan ", " inf "):
        assert word not in text(), word


def test_the_last_word_is_where_anybody_may_weigh_it_themselves():
    last = reply_sections(desk().catalog, reply())[-1]
    assert last.name == "weigh"
    (said,) = last.blocks
    assert said.text.startswith("Weigh it yourself: weigh.html#v=1&region=EU&")
    assert "mass" not in said.text
    assert "left=" not in said.text
