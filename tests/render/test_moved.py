from spindlewise.render.moved import give_or_take, moved


def test_a_saddle_moves_by_halves_of_a_millimetre() -> None:
    assert [moved(mm) for mm in (2.74, -0.25, 0.24, -0.1, 0.0)] == [
        "up 2.5 mm",
        "down 0.5 mm",
        "no change",
        "no change",
        "no change",
    ]


def test_no_plus_minus_says_nothing() -> None:
    assert give_or_take(0.0) == ""
    assert give_or_take(0.55) == ", give or take 0.6 mm"
