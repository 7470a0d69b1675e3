"""The bench's pages as jobs: the index, rides, sessions, weighings, battery hours."""

from collections.abc import Mapping

from spindlewise.site.bench_pages import HOURS_PAGE, INDEX, SESSIONS_PAGE, WEIGHINGS_PAGE, BenchPages
from spindlewise.site.frame import Frame
from spindlewise.site.job import Job
from spindlewise.site.ride_assets import ride_assets
from spindlewise.site.ride_page import RidePage
from spindlewise.site.templating import json_for_script, render_page, render_with

Drawn = Mapping[str, str]


def bench_jobs(bench: BenchPages, frame: Frame, drawn: Drawn) -> list[Job]:
    """Every page that there is something for; the index always."""
    jobs = [
        _page(INDEX, "bench.html.j2", frame, bench=bench),
        *(_ride(ride, frame, drawn) for ride in bench.rides),
    ]
    if bench.sessions:
        jobs.append(_page(SESSIONS_PAGE, "sessions.html.j2", frame, sessions=bench.sessions, drawn=drawn))
    for path, section, words in (
        (WEIGHINGS_PAGE, bench.weighings, "What the scales of the bench say"),
        (HOURS_PAGE, bench.hours, "How long batteries ran on the bench"),
    ):
        if section is not None:
            jobs.append(_page(path, "bench_words.html.j2", frame, shown=section, words=words))
    return jobs


def _page(path: str, template: str, frame: Frame, **values: object) -> Job:
    return Job(path, lambda: render_page(template, path, frame=frame, section="bench", **values))


def _ride(ride: RidePage, frame: Frame, drawn: Drawn) -> Job:
    from markupsafe import Markup

    own = ride_assets()
    # JSON that cannot end its element
    data = Markup(json_for_script(ride.zoom))  # noqa: S704  # see above
    return Job(
        ride.path,
        lambda: render_with(
            own, "ride.html.j2", ride.path, frame=frame, section="bench", ride=ride, drawn=drawn, data=data
        ),
    )
