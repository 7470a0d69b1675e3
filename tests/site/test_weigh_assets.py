"""The page's own style and script, and what its policy lets through."""

import re

from spindlewise.site.policy import content_policy, source_hash
from spindlewise.site.weigh_assets import SCRIPTS, weigh_assets


def test_the_policy_knows_this_style_and_this_script_by_their_hashes():
    own = weigh_assets()
    assert own.policy == content_policy(own.style, own.script)
    assert source_hash(own.script) in own.policy
    assert "unsafe" not in own.policy


def test_nothing_in_them_could_end_their_elements():
    own = weigh_assets()
    assert "</" not in own.style
    assert "</script" not in own.script.lower()
    assert "<!--" not in own.script


def test_the_script_makes_no_code_from_text_and_asks_for_nothing():
    script = weigh_assets().script
    for word in (
        "eval(",
        "new Function",
        "innerHTML",
        "outerHTML",
        "insertAdjacent",
        "document.write",
        "fetch(",
        "XMLHttp",
    ):
        assert word not in script, word
    assert not re.search(r"https?://(?!www\.w3\.org/2000/svg)", script)


def test_its_parts_come_in_the_order_in_which_they_are_used():
    script = weigh_assets().script
    starts = [script.index(f"const Weigh{part.title().replace('_', '')} =") for part in SCRIPTS]
    assert starts == sorted(starts)
