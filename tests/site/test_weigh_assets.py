"""Style and script of the page, and the policy that allows exactly these."""

from spindlewise.site.policy import source_hash
from spindlewise.site.weigh_assets import SCRIPTS, weigh_assets


def test_the_policy_names_the_hashes_of_both():
    own = weigh_assets()

    assert source_hash(own.style) in own.policy
    assert source_hash(own.script) in own.policy
    assert len(SCRIPTS) == 6


def test_the_script_reaches_for_no_network_and_evaluates_no_text():
    script = weigh_assets().script

    for word in ("fetch(", "XMLHttpRequest", "WebSocket", "eval(", "new Function", "innerHTML"):
        assert word not in script
