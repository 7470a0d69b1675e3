from spindlewise.site.policy import source_hash
from spindlewise.site.ride_assets import ride_assets
from spindlewise.site.templating import assets


def test_the_page_has_the_site_s_style_and_a_script_of_its_own():
    own = ride_assets()
    assert own.style.startswith(assets().style)
    assert ".closer" in own.style
    assert source_hash(own.script) in own.policy
    assert source_hash(own.style) in own.policy
    assert "</" not in own.style + own.script
