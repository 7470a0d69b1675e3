"""The weighing page of the published site where no script runs: the ranking and its pictures stand there."""


def test_the_pictures_of_the_usual_weighting_stand_where_no_script_draws_others(read):
    still = read(java_script_enabled=False).open("weigh.html")
    charts = still.locator("svg.chart")
    assert charts.count() == 2
    assert all(charts.nth(n).is_visible() for n in range(2))
    names = [charts.nth(n).locator("title").first.text_content() for n in range(2)]
    headings = still.locator("section.pictured h2").all_inner_texts()
    assert names == headings
    assert still.locator("section.pictured details table").count() == 2
    page_px, ranking_px = (
        still.locator(part).bounding_box()["width"]
        for part in ("main", "#w-results")  # type: ignore[index]
    )
    assert ranking_px > 0.9 * page_px, "no room is kept for a form that is not there"
    wide = still.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    assert wide <= 0


def test_where_a_script_runs_its_own_pictures_stand_there_instead(read):
    moving = read().open("weigh.html")
    moving.locator("#w-follows svg").first.wait_for(state="attached")  # drawn after the ranking
    assert moving.locator("section.pictured svg.chart").count() == 0
