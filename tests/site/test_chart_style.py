from spindlewise.site.chart_style import filled, template


def test_words_are_filled_in_wherever_they_stand():
    given = {"a": ["@x", 1], "b": {"c": "@y"}, "d": ["@x"], "e": ["other"], "f": [1], "g": []}
    assert filled(given, {"@x": [7], "@y": 8}) == {
        "a": [[7], 1],
        "b": {"c": 8},
        "d": [7],
        "e": ["other"],
        "f": [1],
        "g": [],
    }
    assert given["d"] == ["@x"]


def test_a_template_is_plain_data_in_the_site_s_style():
    import altair

    found = template(altair.Chart(altair.InlineData(values=[])).mark_point())
    assert found["background"] == "transparent"
    assert found["config"]["axis"]["labelLimit"] == 0
