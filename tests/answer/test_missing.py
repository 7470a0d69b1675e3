"""A question without an answer carries what would help."""

from spindlewise.answer.missing import NoAnswer


def test_message_and_tip():
    none = NoAnswer("nothing meets the needs", "drop one")

    assert (str(none), none.message, none.tip) == ("nothing meets the needs",) * 2 + ("drop one",)
    assert NoAnswer("nothing").tip == ""
