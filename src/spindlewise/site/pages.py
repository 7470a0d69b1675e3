"""Gather everything: each page and download of the site as bytes in memory, before anything is written."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.reply import Reply, reply_to
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog
from spindlewise.site.addresses import buyer_page, product_page, region_page
from spindlewise.site.buyer_view import buyer_view
from spindlewise.site.charts import front, price_score_chart
from spindlewise.site.downloads import prices_csv, products_csv, products_json, ranking_json
from spindlewise.site.frame import Frame, frame_of
from spindlewise.site.product_view import ProductView, product_view
from spindlewise.site.region_table import RegionTable, chart_points, region_table
from spindlewise.site.templating import render_page


@dataclass(frozen=True, slots=True)
class Job:
    """One file of the site, and how to make it."""

    path: str
    make: Callable[[], bytes]


Progress = Callable[[Iterable[Job], int], Iterable[Job]]


def silent(jobs: Iterable[Job], _total: int) -> Iterable[Job]:
    """No progress shown."""
    return jobs


def gather(
    catalog: Catalog, buyers: Mapping[str, Buyer], day: date, progress: Progress = silent
) -> dict[str, bytes]:
    """Every file of the site by its path, sorted; same catalog, buyers and day, same bytes."""
    desk = Desk(catalog, day)
    frame = frame_of(desk, buyers)
    tables = {code: region_table(desk, code) for code in catalog.settings.regions}
    replies, unserved = _replies(desk, buyers)
    views = [product_view(desk, p, tables, replies) for p in catalog.products.values()]
    jobs: list[Job] = []
    first = next(iter(tables))
    for code, table in tables.items():
        jobs.append(_region(frame, region_page(code, first), table))
    jobs += [_product(frame, view) for view in views]
    for name, reply in replies.items():
        jobs += [_buyer(frame, desk, name, reply), _ranking(name, reply)]
    for name, why in unserved.items():
        jobs.append(
            _page(frame, "unserved.html.j2", buyer_page(name), section="buyers", buyer=buyers[name], why=why)
        )
    jobs.append(_page(frame, "buyers.html.j2", "buyers/index.html", section="buyers", replies=replies))
    jobs.append(_page(frame, "method.html.j2", "method.html", section="method", criteria=catalog.criteria))
    jobs.append(
        _page(
            frame,
            "cautions.html.j2",
            "cautions.html",
            section="cautions",
            cautions=catalog.settings.cautions,
            views=views,
        )
    )
    jobs.append(_page(frame, "disclosure.html.j2", "disclosure.html", section="disclosure", views=views))
    jobs += [
        Job("data/products.csv", lambda: products_csv(desk)),
        Job("data/prices.csv", lambda: prices_csv(desk)),
        Job("data/products.json", lambda: products_json(desk)),
    ]
    made = {job.path: job.make() for job in progress(jobs, len(jobs))}
    return dict(sorted(made.items()))


def _replies(desk: Desk, buyers: Mapping[str, Buyer]) -> tuple[dict[str, Reply], dict[str, str]]:
    replies, unserved = {}, {}
    for name, buyer in sorted(buyers.items()):
        try:
            replies[name] = reply_to(desk, buyer)
        except NoMarket as none:
            unserved[name] = str(none)
    return replies, unserved


def _page(frame: Frame, template: str, path: str, section: str, **values: object) -> Job:
    return Job(path, lambda: render_page(template, path, frame=frame, section=section, **values))


def _region(frame: Frame, path: str, table: RegionTable) -> Job:
    def make() -> bytes:
        points = chart_points(table)
        return render_page(
            "region.html.j2",
            path,
            frame=frame,
            section="pedals",
            table=table,
            chart=price_score_chart(points, table.currency),
            front=front(points),
        )

    return Job(path, make)


def _product(frame: Frame, view: ProductView) -> Job:
    return _page(frame, "product.html.j2", product_page(view.product.id), section="pedals", view=view)


def _buyer(frame: Frame, desk: Desk, name: str, reply: Reply) -> Job:
    path = buyer_page(name)
    return Job(
        path,
        lambda: render_page(
            "buyer.html.j2", path, frame=frame, section="buyers", view=buyer_view(desk, reply)
        ),
    )


def _ranking(name: str, reply: Reply) -> Job:
    return Job(f"data/ranking-{name}.json", lambda: ranking_json(reply))
