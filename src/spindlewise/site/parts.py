"""The parts of a site, each with what it rests on: regions, buyers, products, the bench, single pages."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import partial

from spindlewise.answer.reply import Reply
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.product import Product
from spindlewise.render.fragment import PAGE as WEIGH_PAGE
from spindlewise.site.addresses import PAIRS_PAGE, buyer_page, pair_page, product_page, region_page
from spindlewise.site.bench_jobs import bench_jobs
from spindlewise.site.buyer_view import buyer_view
from spindlewise.site.charts import front
from spindlewise.site.download_jobs import (
    catalog_jobs,
    comparison_jobs,
    price_job,
    ranking_job,
    region_downloads,
)
from spindlewise.site.export_reception import reception_tables
from spindlewise.site.facts import Facts
from spindlewise.site.feed import FEED, atom_feed
from spindlewise.site.feed import PAGE as CHANGES_PAGE
from spindlewise.site.history_pictures import history_pictures
from spindlewise.site.job import Job
from spindlewise.site.kept_site import KeptSite
from spindlewise.site.part import Drawn, Part
from spindlewise.site.picture import Picture
from spindlewise.site.product_view import product_view
from spindlewise.site.region_table import chart_points
from spindlewise.site.rests_on import RestsOn
from spindlewise.site.structured import product_data
from spindlewise.site.templating import render_page
from spindlewise.site.told import BenchTold, BuyerTold, bench_told, buyer_told, market_missing
from spindlewise.site.weigh import weigh_page

TRAIL = "trail"
"""By which the picks of former days are kept."""


@dataclass(frozen=True, slots=True)
class Sources:
    """What all parts are made from: the facts, what they rest on, and what an earlier publish found out."""

    facts: Facts
    on: RestsOn
    kept: KeptSite

    def page(self, template: str, path: str, section: str, values: Callable[[], Mapping[str, object]]) -> Job:
        """One page as a job; `values`, what the template shows, are worked out when the page is made."""
        frame = self.facts.frame
        return Job(path, lambda: render_page(template, path, frame=frame, section=section, **values()))


def site_parts(sources: Sources) -> list[Part]:
    """Every part. What they tell each other is looked up or worked out; no page is made."""
    facts, on, kept = sources.facts, sources.on, sources.kept
    missing = {
        code: kept.thing(f"market {code}", on.all_but_prices(), partial(market_missing, facts, code))
        for code in facts.regions
    }
    buyers = {
        name: kept.thing(f"buyer {name}", on.prices_in(buyer.region), partial(buyer_told, facts, name))
        for name, buyer in sorted(facts.buyers.items())
    }
    bench = kept.thing("bench", on.all_but_prices("bench"), lambda: bench_told(facts.bench))
    return [
        *(_region(sources, code) for code in facts.regions),
        *(
            _product(sources, product, missing, buyers, bench)
            for product in facts.desk.catalog.products.values()
        ),
        *(_buyer(sources, name, buyer) for name, buyer in sorted(facts.buyers.items())),
        _lists(sources, buyers),
        _bench(sources),
        _weigh(sources),
        _changes(sources),
        _lasting(sources),
        Part("prices", on.all, lambda _: [price_job(facts.desk)]),
    ]


def _region(sources: Sources, code: str) -> Part:
    facts = sources.facts

    def values(drawn: Drawn) -> dict[str, object]:
        table = facts.table(code)
        downloads, points = region_downloads(code), front(chart_points(table))
        shown = {"table": table, "chart": facts.front(code), "front": points, "downloads": downloads}
        return {**shown, "drawn": drawn}

    def jobs(drawn: Drawn) -> list[Job]:
        path = region_page(code, facts.regions[0])
        page = sources.page("region.html.j2", path, "pedals", lambda: values(drawn))
        comparison = facts.comparison(code)
        more = [] if comparison is None else comparison_jobs(facts.desk_in(code), code, comparison)
        return [page, *more]

    def pictures() -> Iterable[Picture]:
        picture = facts.front(code)
        return () if picture is None else (picture,)

    return Part(f"region {code}", sources.on.prices_in(code), jobs, pictures)


def _product(
    sources: Sources,
    product: Product,
    missing: Mapping[str, str],
    buyers: Mapping[str, BuyerTold],
    bench: BenchTold,
) -> Part:
    facts, name = sources.facts, product.id
    catalog, day = facts.desk.catalog, facts.desk.day
    places = tuple(told.places[name] for told in buyers.values() if name in told.places)

    def histories() -> dict[str, Picture]:
        return history_pictures(catalog, name, day)

    def values(drawn: Drawn) -> dict[str, object]:
        return {
            "view": product_view(facts.desk, product, missing, places),
            "pictures": histories(),
            "rides": bench.rides.get(name, ()),
            "has_sessions": name in bench.with_sessions,
            "data": product_data(catalog, product, day),
            "drawn": drawn,
        }

    def jobs(drawn: Drawn) -> list[Job]:
        return [sources.page("product.html.j2", product_page(name), "pedals", lambda: values(drawn))]

    rests_on = sources.on.prices_of(name, missing, places)
    return Part(f"product {name}", rests_on, jobs, lambda: histories().values())


def _buyer(sources: Sources, name: str, buyer: Buyer) -> Part:
    facts = sources.facts

    def values(reply: Reply, drawn: Drawn) -> dict[str, object]:
        view, pictures = buyer_view(facts.desk_in(buyer.region), reply), facts.figures(name)
        return {"view": view, "pictures": pictures, "pair": facts.pair(name), "drawn": drawn}

    def jobs(drawn: Drawn) -> list[Job]:
        reply, path = facts.reply(name), buyer_page(name)
        if isinstance(reply, str):
            why = {"buyer": buyer, "why": reply}
            return [sources.page("unserved.html.j2", path, "buyers", lambda: why)]
        made = [
            sources.page("buyer.html.j2", path, "buyers", lambda: values(reply, drawn)),
            ranking_job(name, reply),
        ]
        pair = facts.pair(name)
        if pair is not None:
            made.append(sources.page("pair.html.j2", pair_page(name), "buyers", lambda: {"pair": pair}))
        return made

    return Part(
        f"buyer {name}",
        sources.on.prices_in(buyer.region),
        jobs,
        lambda: (figure.picture for figure in facts.figures(name)),
    )


def _lists(sources: Sources, buyers: Mapping[str, BuyerTold]) -> Part:
    """The lists of all buyers and of all pairs."""
    answers = {name: (told.pick, told.nothing_because, told.unserved) for name, told in buyers.items()}
    pairs = {name: told.pair for name, told in buyers.items() if told.pair is not None}

    def jobs(_: Drawn) -> list[Job]:
        return [
            sources.page("buyers.html.j2", "buyers/index.html", "buyers", lambda: {"answers": buyers}),
            sources.page("pairs.html.j2", PAIRS_PAGE, "buyers", lambda: {"pairs": pairs}),
        ]

    return Part("lists", sources.on.all_but_prices("lists", answers, pairs), jobs)


def _bench(sources: Sources) -> Part:
    facts = sources.facts
    return Part(
        "bench",
        sources.on.all_but_prices("bench"),
        lambda drawn: bench_jobs(facts.bench, facts.frame, drawn),
        lambda: facts.bench.pictures,
    )


def _weigh(sources: Sources) -> Part:
    facts, kept = sources.facts, sources.kept
    desk, name, rests_on = facts.desk, "reception", sources.on.all_but_prices("reception")

    def page(drawn: Drawn) -> bytes:
        catalog, yardstick = desk.catalog, desk.yardstick
        tables = kept.thing(name, rests_on, lambda: reception_tables(catalog, yardstick, desk.day))
        return weigh_page(desk, facts.frame, facts.buyers, tables, facts.usual, drawn)

    kept.carry(name, rests_on)
    return Part(
        "weigh",
        sources.on.all,
        lambda drawn: [Job(WEIGH_PAGE, lambda: page(drawn))],
        lambda: (figure.picture for figure in facts.usual),
    )


def _changes(sources: Sources) -> Part:
    facts, rests_on = sources.facts, sources.on.all_but_prices(TRAIL)

    def values() -> dict[str, object]:
        sources.kept.keep(TRAIL, rests_on, facts.changes.trail)
        names = {name: buyer.name for name, buyer in facts.buyers.items()}
        return {"page_view": facts.changes, "buyer_names": names}

    def jobs(_: Drawn) -> list[Job]:
        return [
            sources.page("changes.html.j2", CHANGES_PAGE, "changes", values),
            Job(FEED, lambda: atom_feed(facts.frame, facts.changes)),
        ]

    return Part("changes", sources.on.all, jobs)


def _lasting(sources: Sources) -> Part:
    """Pages and data in which no price stands."""
    facts = sources.facts
    catalog, day = facts.desk.catalog, facts.desk.day

    def cautions() -> dict[str, object]:
        notices = {name: standing_notices(product, day) for name, product in catalog.products.items()}
        return {"cautions": catalog.settings.cautions, "notices": notices}

    def jobs(drawn: Drawn) -> list[Job]:
        products, criteria = catalog.products.values(), catalog.criteria
        claims = {"drawn": drawn}
        return [
            sources.page(
                "claims.html.j2", "claims.html", "claims", lambda: {**claims, "page_view": facts.claims}
            ),
            sources.page("method.html.j2", "method.html", "method", lambda: {"criteria": criteria}),
            sources.page("cautions.html.j2", "cautions.html", "cautions", cautions),
            sources.page(
                "disclosure.html.j2", "disclosure.html", "disclosure", lambda: {"products": products}
            ),
            *catalog_jobs(facts.desk),
        ]

    return Part(
        "lasting",
        sources.on.all_but_prices("lasting"),
        jobs,
        lambda: (figure.picture for figure in facts.claims.weights),
    )
