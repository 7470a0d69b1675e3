from contextlib import contextmanager

import pytest

from spindlewise.site import picture as module
from spindlewise.site.chart_claims import Strayed, claims_chart, claims_picture
from spindlewise.site.job import silent
from spindlewise.site.picture import Picture, draw_all, drawn, pictures_in


def picture(grams=3.0):
    return claims_picture([Strayed("Heron", grams - 1, grams, grams + 1, True, "Heron: off")])


def test_the_key_is_of_all_that_is_shown():
    one = picture()
    assert one.key == picture().key
    others = [
        picture(4.0),
        Picture("other", one.title, one.description, claims_chart, one.shown),
        Picture(one.name, "Other", one.description, claims_chart, one.shown),
        Picture(one.name, one.title, "Other.", claims_chart, one.shown),
        Picture(one.name, one.title, one.description, dict, one.shown),
    ]
    assert len({one.key, *(p.key for p in others)}) == 6


def test_another_chart_program_makes_another_key(monkeypatch):
    before = picture().key
    module._drawn_by.cache_clear()
    monkeypatch.setattr(module, "chart_sources", lambda: "other text")
    after = picture().key
    module._drawn_by.cache_clear()
    assert before != after


def test_a_picture_is_found_again_in_a_page():
    svg = drawn(picture())
    page = f"<p>before</p>{svg}<svg class='other'></svg>{svg}<p>after</p>"
    assert pictures_in(page) == {picture().key: svg}
    assert pictures_in("<p>none</p>") == {}


def test_what_is_kept_is_not_drawn_again(monkeypatch):
    asked = []
    monkeypatch.setattr(module, "drawn", lambda p: asked.append(p) or f"drawn {p.key}")
    one, two = picture(1.0), picture(2.0)
    found = draw_all([one, two, one], {one.key: "kept", "more": "unused"}, silent)
    assert found == {one.key: "kept", two.key: f"drawn {two.key}"}
    assert asked == [two]


def test_progress_sees_each_that_is_drawn(monkeypatch):
    monkeypatch.setattr(module, "drawn", lambda p: p.key)
    seen = []

    def watch(jobs, total):
        for job in jobs:
            seen.append((job.path, job.make(), total))
            yield job

    draw_all([picture(1.0), picture(2.0)], {}, watch)
    assert seen == [("Weight, claimed against weighed", b"", 2)] * 2


@pytest.mark.slow
def test_several_processes_draw_the_same(monkeypatch):
    monkeypatch.setattr(module, "WORTH_A_SECOND_PROCESS", 2)
    monkeypatch.setattr(module, "cpu_count", lambda: 2)
    wanted = [picture(float(g)) for g in range(3)]
    assert draw_all(wanted, {}, silent) == {p.key: drawn(p) for p in wanted}


def test_one_core_never_asks_for_more(monkeypatch):
    @contextmanager
    def none(*_args):
        raise AssertionError("no pool was wanted")
        yield

    monkeypatch.setattr(module, "WORTH_A_SECOND_PROCESS", 1)
    monkeypatch.setattr(module, "cpu_count", lambda: None)
    monkeypatch.setattr(module, "ProcessPoolExecutor", none)
    draw_all([picture(1.0), picture(2.0)], {}, silent)
