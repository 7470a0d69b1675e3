"""Safety notices in words."""

from datetime import date

import worlds
from spindlewise.render.blocks import Paragraph
from spindlewise.render.naming import naming
from spindlewise.render.words_notices import notice_blocks, notice_words, standing_on

NOTICE = {
    "date": date(2026, 5, 1),
    "ended": date(2026, 6, 1),
    "what": "may crack",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def catalog():
    products = [worlds.product("heron", safety_notices=(NOTICE,)), worlds.product("siskin")]
    return worlds.desk(products, []).catalog


def test_what_is_wrong_what_to_do_and_who_says_so_make_one_paragraph():
    ((name, notice),) = standing_on(catalog(), ("heron", "siskin", "gone"), date(2026, 5, 1))
    words = "Heron: May crack. Stop riding. (Issued 2026-05-01 by the maker.)"

    assert name == "heron"
    assert notice_words("Heron", notice) == words
    found = notice_blocks(catalog(), ("heron",), date(2026, 5, 31), naming(catalog()))
    assert found == (Paragraph(f"Invented Works {words}", "caution"),)


def test_before_it_is_issued_and_once_it_is_lifted_nothing_is_said():
    for day in (date(2026, 4, 30), date(2026, 6, 1)):
        assert standing_on(catalog(), ("heron",), day) == ()
