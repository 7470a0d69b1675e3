import worlds
from spindlewise.site.frame import frame_of


def test_the_frame_names_everything_in_order():
    desk = worlds.desk([worlds.product("siskin"), worlds.product("heron")], [])
    found = frame_of(desk, {"bb": worlds.buyer(id="bb"), "aa": worlds.buyer(id="aa")})
    assert [page for _, _, page in found.regions] == ["index.html", "regions/us.html", "regions/jp.html"]
    assert [name for name, _, _ in found.buyers] == ["aa", "bb"]
    assert found.products == {"heron": "Invented Works Heron", "siskin": "Invented Works Siskin"}
    assert found.invented == "Everything here is invented."
    assert found.day == worlds.DAY
