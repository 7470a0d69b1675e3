"""All that pages are made from: tables, replies, views, pictures; each worked out when it is asked for."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache, cached_property

from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.private import for_all_eyes
from spindlewise.answer.receptions import Receptions
from spindlewise.answer.reply import Reply, reply_to
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.price_rows import PriceRows
from spindlewise.site.bench_pages import BenchPages, bench_pages
from spindlewise.site.buyer_pictures import buyer_pictures
from spindlewise.site.changes_page import ChangesPage, changes_page
from spindlewise.site.charts import price_score_picture
from spindlewise.site.claims_page import ClaimsPage, claims_page
from spindlewise.site.comparison import Comparison, region_comparison
from spindlewise.site.figured import Figured
from spindlewise.site.frame import frame_of
from spindlewise.site.pairs import Pair, pair_of
from spindlewise.site.pick_moves import Step
from spindlewise.site.picture import Picture
from spindlewise.site.region_table import RegionTable, chart_points, region_table
from spindlewise.site.weigh_pictures import weigh_pictures


class Facts:
    """One catalog on one day with the buyers who are published; what has been worked out is kept.

    Whoever buys in a region is answered from a catalog with the prices of this region alone, so that a page
    about one region cannot change by a price in another.
    """

    def __init__(self, desk: Desk, buyers: Mapping[str, Buyer], trail: Sequence[Step] = ()) -> None:
        """`trail` is what an earlier publish found out about former days, as far as it still holds."""
        self.desk = desk
        self.buyers = buyers
        self.frame = frame_of(desk, buyers)
        self.regions = tuple(desk.catalog.settings.regions)
        self._trail = trail
        self._receptions = Receptions()
        # kept per object: a fact asked for twice is the same fact
        self.desk_in = cache(self._desk_in)
        self.table = cache(self._table)
        self.front = cache(self._front)
        self.comparison = cache(self._comparison)
        self.reply = cache(self._reply)
        self.figures = cache(self._figures)
        self.pair = cache(self._pair)

    def _desk_in(self, region: str) -> Desk:
        """A desk on the prices of one region."""
        catalog = self.desk.catalog
        own = PriceRows(row for row in catalog.prices if row.region == region)
        return Desk(replace(catalog, prices=own), self.desk.day, self.desk.record, self._receptions)

    def _table(self, region: str) -> RegionTable:
        return region_table(self.desk_in(region), region)

    def _front(self, region: str) -> Picture | None:
        table = self.table(region)
        return price_score_picture(chart_points(table), table.currency)

    def _comparison(self, region: str) -> Comparison | None:
        return region_comparison(self.desk_in(region), region)

    def _reply(self, buyer: str) -> Reply | str:
        """The reply to a buyer; or why the catalog cannot serve the region or currency."""
        asked = self.buyers[buyer]
        desk = self.desk_in(asked.region)
        try:
            return reply_to(desk, *for_all_eyes(desk, asked))
        except NoMarket as none:
            return str(none)

    def _figures(self, buyer: str) -> tuple[Figured, ...]:
        reply = self.reply(buyer)
        return (
            () if isinstance(reply, str) else buyer_pictures(self.desk_in(self.buyers[buyer].region), reply)
        )

    def _pair(self, buyer: str) -> Pair | None:
        """The pick beside what comes next."""
        reply = self.reply(buyer)
        return (
            None if isinstance(reply, str) else pair_of(self.desk_in(self.buyers[buyer].region), buyer, reply)
        )

    @cached_property
    def usual(self) -> tuple[Figured, ...]:
        """The pictures of the usual weighting, in the first region that can be served."""
        found = (weigh_pictures(self.desk_in(code), self.table(code)) for code in self.regions)
        return next((figures for figures in found if figures), ())

    @cached_property
    def claims(self) -> ClaimsPage:
        """Claims held to what was measured."""
        return claims_page(self.desk)

    @cached_property
    def bench(self) -> BenchPages:
        """What the bench kept."""
        return bench_pages(self.desk)

    @cached_property
    def changes(self) -> ChangesPage:
        """What changed lately, and what it did to picks."""
        return changes_page(self.desk.catalog, self.buyers, self.desk.day, self._trail, self._receptions)
