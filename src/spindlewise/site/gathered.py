"""All that a publish knows before a page is made: tables, replies, views, and every picture needed."""

from collections.abc import Mapping
from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.private import for_all_eyes
from spindlewise.answer.reply import Reply, reply_to
from spindlewise.buyer.buyer import Buyer
from spindlewise.site.bench_pages import BenchPages, bench_pages
from spindlewise.site.buyer_pictures import buyer_pictures
from spindlewise.site.changes_page import ChangesPage, changes_page
from spindlewise.site.charts import price_score_picture
from spindlewise.site.claims_page import ClaimsPage, claims_page
from spindlewise.site.figured import Figured
from spindlewise.site.frame import Frame, frame_of
from spindlewise.site.history_pictures import history_pictures
from spindlewise.site.pairs import Pair, pairs
from spindlewise.site.picture import Picture
from spindlewise.site.product_view import ProductView, product_view
from spindlewise.site.region_table import RegionTable, chart_points, region_table


@dataclass(frozen=True, slots=True)
class Gathered:
    """What the pages are made from; each mapping is by region, buyer or product id."""

    desk: Desk
    buyers: Mapping[str, Buyer]
    frame: Frame
    tables: Mapping[str, RegionTable]
    replies: Mapping[str, Reply]
    unserved: Mapping[str, str]
    """Buyers whose region or currency the catalog cannot serve, and why."""
    views: tuple[ProductView, ...]
    claims: ClaimsPage
    changes: ChangesPage
    bench: BenchPages
    fronts: Mapping[str, Picture | None]
    histories: Mapping[str, Mapping[str, Picture]]
    figures: Mapping[str, tuple[Figured, ...]]
    pairs: Mapping[str, Pair]
    """By buyer: the pick beside what comes next."""

    @property
    def pictures(self) -> list[Picture]:
        """Every picture of the site."""
        found = [picture for picture in self.fronts.values() if picture]
        found += [figure.picture for figure in self.claims.weights]
        found += self.bench.pictures
        found += [figure.picture for figures in self.figures.values() for figure in figures]
        found += [picture for own in self.histories.values() for picture in own.values()]
        return found


def gather_facts(desk: Desk, buyers: Mapping[str, Buyer]) -> Gathered:
    """Work everything out, once."""
    catalog = desk.catalog
    tables = {code: region_table(desk, code) for code in catalog.settings.regions}
    replies, unserved = _replies(desk, buyers)
    return Gathered(
        desk=desk,
        buyers=buyers,
        frame=frame_of(desk, buyers),
        tables=tables,
        replies=replies,
        unserved=unserved,
        views=tuple(product_view(desk, p, tables, replies) for p in catalog.products.values()),
        claims=claims_page(desk),
        changes=changes_page(catalog, buyers, desk.day),
        bench=bench_pages(desk),
        fronts={
            code: price_score_picture(chart_points(table), table.currency) for code, table in tables.items()
        },
        histories={name: history_pictures(catalog, name, desk.day) for name in catalog.products},
        figures={name: buyer_pictures(desk, reply) for name, reply in replies.items()},
        pairs=pairs(desk, replies),
    )


def _replies(desk: Desk, buyers: Mapping[str, Buyer]) -> tuple[dict[str, Reply], dict[str, str]]:
    replies, unserved = {}, {}
    for name, buyer in sorted(buyers.items()):
        try:
            replies[name] = reply_to(desk, *for_all_eyes(desk, buyer))
        except NoMarket as none:
            unserved[name] = str(none)
    return replies, unserved
