"""Gather everything: each page and download of the site as bytes in memory, before anything is written."""

from collections.abc import Mapping
from datetime import date

from spindlewise.answer.desk import Desk
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.render.fragment import PAGE as WEIGH_PAGE
from spindlewise.site.addresses import PAIRS_PAGE, buyer_page, pair_page, product_page, region_page
from spindlewise.site.bench_jobs import bench_jobs
from spindlewise.site.buyer_view import buyer_view
from spindlewise.site.charts import front
from spindlewise.site.download_jobs import download_jobs, region_downloads
from spindlewise.site.feed import atom_feed
from spindlewise.site.gathered import Gathered, gather_facts
from spindlewise.site.job import Job, Progress, silent
from spindlewise.site.picture import draw_all
from spindlewise.site.product_view import ProductView
from spindlewise.site.region_table import chart_points
from spindlewise.site.single_file import single_file
from spindlewise.site.structured import product_data
from spindlewise.site.templating import render_page
from spindlewise.site.weigh import weigh_page

Drawn = Mapping[str, str]
"""Pictures as SVG elements, by their keys."""
NOTHING_KEPT: Drawn = {}


def gather(
    catalog: Catalog,
    buyers: Mapping[str, Buyer],
    day: date,
    progress: Progress = silent,
    kept: Drawn = NOTHING_KEPT,
) -> dict[str, bytes]:
    """Every file of the site by its path, sorted; same catalog, buyers and day, same bytes.

    `kept` are pictures of an earlier publish, which need not be drawn again.
    """
    return _made(gather_facts(Desk(catalog, day), buyers), progress, kept)


def single(catalog: Catalog, buyers: Mapping[str, Buyer], day: date, progress: Progress = silent) -> bytes:
    """The same as one HTML file."""
    facts = gather_facts(Desk(catalog, day), buyers)
    return single_file(_made(facts, progress, NOTHING_KEPT), facts.frame)


def _made(facts: Gathered, progress: Progress, kept: Drawn) -> dict[str, bytes]:
    drawn = draw_all(facts.pictures, kept, progress)
    jobs = [*_regions(facts, drawn), *_products(facts, drawn), *_buyers(facts, drawn), *_pairs(facts)]
    jobs += [*_single_pages(facts, drawn), *bench_jobs(facts.bench, facts.frame, drawn)]
    jobs += download_jobs(facts.desk, facts.replies)
    made = {job.path: job.make() for job in progress(jobs, len(jobs))}
    return dict(sorted(made.items()))


def _page(facts: Gathered, template: str, path: str, section: str, **values: object) -> Job:
    return Job(path, lambda: render_page(template, path, frame=facts.frame, section=section, **values))


def _regions(facts: Gathered, drawn: Drawn) -> list[Job]:
    first = next(iter(facts.tables))
    return [
        _page(
            facts,
            "region.html.j2",
            region_page(code, first),
            "pedals",
            table=table,
            chart=facts.fronts[code],
            front=front(chart_points(table)),
            downloads=region_downloads(code),
            drawn=drawn,
        )
        for code, table in facts.tables.items()
    ]


def _products(facts: Gathered, drawn: Drawn) -> list[Job]:
    return [_product(facts, view, drawn) for view in facts.views]


def _product(facts: Gathered, view: ProductView, drawn: Drawn) -> Job:
    name = view.product.id
    return _page(
        facts,
        "product.html.j2",
        product_page(name),
        "pedals",
        view=view,
        pictures=facts.histories[name],
        rides=facts.bench.by_product.get(name, ()),
        has_sessions=name in facts.bench.with_sessions,
        data=product_data(facts.desk.catalog, view.product, facts.desk.day),
        drawn=drawn,
    )


def _pairs(facts: Gathered) -> list[Job]:
    jobs = [_page(facts, "pairs.html.j2", PAIRS_PAGE, "buyers", pairs=facts.pairs)]
    jobs += [
        _page(facts, "pair.html.j2", pair_page(name), "buyers", pair=pair)
        for name, pair in facts.pairs.items()
    ]
    return jobs


def _buyers(facts: Gathered, drawn: Drawn) -> list[Job]:
    jobs = []
    for name, reply in facts.replies.items():
        view, pictures = buyer_view(facts.desk, reply), facts.figures[name]
        page = buyer_page(name)
        shown = {"view": view, "pictures": pictures, "pair": facts.pairs.get(name)}
        jobs.append(_page(facts, "buyer.html.j2", page, "buyers", drawn=drawn, **shown))
    for name, why in facts.unserved.items():
        jobs.append(
            _page(facts, "unserved.html.j2", buyer_page(name), "buyers", buyer=facts.buyers[name], why=why)
        )
    jobs.append(_page(facts, "buyers.html.j2", "buyers/index.html", "buyers", replies=facts.replies))
    return jobs


def _single_pages(facts: Gathered, drawn: Drawn) -> list[Job]:
    catalog, views = facts.desk.catalog, facts.views
    cautions = catalog.settings.cautions
    return [
        Job(WEIGH_PAGE, lambda: weigh_page(facts.desk, facts.frame, facts.buyers)),
        _page(facts, "claims.html.j2", "claims.html", "claims", page_view=facts.claims, drawn=drawn),
        _page(
            facts,
            "changes.html.j2",
            "changes.html",
            "changes",
            page_view=facts.changes,
            buyer_names={name: buyer.name for name, buyer in facts.buyers.items()},
        ),
        Job("changes.xml", lambda: atom_feed(facts.frame, facts.changes)),
        _page(facts, "method.html.j2", "method.html", "method", criteria=catalog.criteria),
        _page(facts, "cautions.html.j2", "cautions.html", "cautions", cautions=cautions, views=views),
        _page(facts, "disclosure.html.j2", "disclosure.html", "disclosure", views=views),
    ]
