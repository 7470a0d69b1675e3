"""Every buyer of the demo is told what changes on the bike, and never what would be right for a body."""

import re
from functools import cache
from pathlib import Path

import pytest

from spindlewise.answer.asking import open_buyers
from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import Reply, reply_to
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.opening import open_catalog
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.as_text import as_text
from spindlewise.render.words_reply import reply_blocks

ROOT = Path(__file__).parents[2] / "catalog"
NAMES = sorted(path.stem for path in (ROOT / "buyers").glob("*.yaml"))
NEVER = re.compile(
    r"\b(ideal|optimal|optimum|perfect|target|diagnos\w*|injur\w*|correct (saddle|height|angle)"
    r"|(saddle|knee) should|should be bent|best (saddle|angle|fit))\b",
    re.IGNORECASE,
)


@cache
def _asked() -> tuple[Desk, dict[str, Buyer]]:
    catalog, problems = open_catalog(ROOT)
    assert catalog is not None, problems
    return Desk(catalog), open_buyers(ROOT / "buyers", catalog)[0]


@cache
def _reply(name: str) -> tuple[Reply, str]:
    desk, buyers = _asked()
    found = reply_to(desk, buyers[name])
    return found, " ".join(as_text(reply_blocks(desk.catalog, found)).split())


@pytest.mark.parametrize("name", NAMES)
def test_no_right_height_no_right_angle_no_diagnosis(name: str) -> None:
    assert NEVER.findall(_reply(name)[1]) == []


def test_the_search_can_find_what_must_not_be_said() -> None:
    for said in ("your ideal saddle height", "a target knee angle", "the knee should be bent", "diagnosis"):
        assert NEVER.search(said)


@pytest.mark.parametrize("name", NAMES)
def test_a_change_on_the_bike_comes_with_cautions_and_who_sees_more(name: str) -> None:
    found, text = _reply(name)
    if found.swap is None:
        assert "What changes on your bike" not in text
        return
    assert "It is not a fit." in text
    assert "A qualified fitter sees what no table does" in text
    if isinstance(found.swap.saddle, SaddleChange):
        assert "by common practice, millimetre for millimetre" in text
        assert "A model of the leg" in text


def test_some_buyers_of_the_demo_see_both_answers_side_by_side() -> None:
    both = [name for name in NAMES if (moved := _reply(name)[0].swap) and moved.leg.change]
    assert {"hill-counter", "shorter-cranks"} <= set(both)
    for name in both:
        text = _reply(name)[1]
        assert "the 1:1 rule overstates it by 0." in text or "for you both agree" in text
        assert "no published measurement of them was found" in text
        assert "Most hangs on " in text
