from small_answers import names
from spindlewise.render.naming import listed, sentence, share_text


def test_products_go_by_maker_and_name_and_criteria_by_title() -> None:
    found = names()
    assert found.product("tarnquell-liskar-duo") == "Tarnquell Liskar Duo"
    assert found.criterion("reading_uncertainty") == "uncertainty of the reading"
    assert found.title("reading_uncertainty") == "Uncertainty of the reading"


def test_what_has_no_name_keeps_its_id() -> None:
    assert names().product("elsewhere") == "elsewhere"
    assert names().title("some_thing") == "some thing"


def test_lists_in_sentences() -> None:
    assert listed([]) == ""
    assert listed(["a", "b"], "or") == "a or b"


def test_sentences_begin_large_and_end_in_one_stop() -> None:
    assert sentence("weigh it.") == "Weigh it."
    assert sentence("") == ""


def test_shares_add_no_digits() -> None:
    assert [share_text(s) for s in (0.0, 1.0, 1 / 3)] == ["0.0 %", "100.0 %", "33.3 %"]
