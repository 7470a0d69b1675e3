import json
from datetime import date

import jinja2
import pytest

from spindlewise.site.templating import assets, day_text, environment, json_for_script, names_text


def test_what_is_undefined_is_an_error():
    with pytest.raises(jinja2.UndefinedError):
        environment().from_string("{{ nothing.like_it }}").render()


def test_everything_is_escaped():
    text = environment().from_string('<p title="{{ said }}">').render(said='"><script>')
    assert text == '<p title="&#34;&gt;&lt;script&gt;">'


def test_json_cannot_end_its_script_and_reads_back():
    hostile = {"</script>": ["<!--", "&", "\u2028\u2029", "ä"]}
    text = json_for_script(hostile)
    assert not set("<>&\u2028\u2029") & set(text)
    assert json.loads(text) == hostile


def test_the_own_style_and_script_cannot_end_their_elements():
    own = assets()
    assert "</" not in own.style
    assert "</" not in own.script
    for text in (own.style, own.script):
        assert "http" not in text
        assert "url(" not in text
        assert "@import" not in text


def test_small_filters():
    assert day_text(date(2026, 1, 2)) == "2026-01-02"
    assert names_text(["b", "a"], {"a": "A", "b": "B"}) == "B, A"
