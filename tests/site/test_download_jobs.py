from dataclasses import replace

import worlds
from spindlewise.site.download_jobs import region_downloads
from spindlewise.site.pages import gather


def test_every_region_s_page_offers_files_that_are_there(site):
    offered = set()
    for region in site.catalog.settings.regions:
        offered |= {download.path for download in region_downloads(region)}
    assert all((site.folder / path).is_file() for path in offered)
    assert {path.rpartition(".")[2] for path in offered} == {"csv", "json", "md", "txt"}
    for name, region in (("index", "eu"), ("regions/us", "us"), ("regions/jp", "jp")):
        page = (site.folder / f"{name}.html").read_text("utf-8")
        below = page.partition('<h2 id="downloads">')[2]
        for ending in ("csv", "json", "md", "txt"):
            assert f"data/comparison-{region}.{ending}" in below
        assert "data/ranking.schema.json" in below


def test_a_region_that_cannot_be_served_has_none():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
    assert "data/comparison-jp.csv" in gather(desk.catalog, {}, desk.day)
    poor = replace(desk.catalog, rates=type(desk.catalog.rates)(()))
    assert "data/comparison-jp.csv" not in gather(poor, {}, desk.day)
