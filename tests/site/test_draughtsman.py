from spindlewise.site.draughtsman import svg_of


def test_a_specification_of_the_open_grammar_becomes_an_svg_with_text_as_text():
    specification = {
        "$schema": "https://vega.github.io/schema/vega-lite/v6.json",
        "data": {"values": [{"pedal": "heron", "grams": 346}]},
        "mark": "bar",
        "encoding": {
            "x": {"field": "grams", "type": "quantitative"},
            "y": {"field": "pedal", "type": "nominal"},
        },
    }
    svg = svg_of(specification)
    assert svg.startswith("<svg")
    assert ">heron</text>" in svg
