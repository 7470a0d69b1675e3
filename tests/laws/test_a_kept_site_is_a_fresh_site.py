"""Whatever happens between two publishes, a site that kept what it could has the bytes of a fresh one."""

import random
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

import worlds
from spindlewise.catalog.price_rows import PriceRows
from spindlewise.catalog.shelf import Shelf
from spindlewise.site.build import publish
from spindlewise.site.manifest import NAME
from spindlewise.site.pages import gather

NAMES = ("avocet", "dunlin", "heron", "plover", "siskin")
NOTICE = {"date": worlds.DAY, "ended": "none", "what": "It cracks.", "action": "Stop.", "issued_by": "maker"}


class World:
    """A catalog, buyers and a day, to which things happen at random."""

    def __init__(self, seed: int) -> None:
        self.draw = random.Random(seed)
        self.products = {name: self.product(name) for name in NAMES}
        self.rows = [self.row(line) for line in range(2, 16)]
        self.buyers = {
            "one": worlds.buyer(id="one"),
            "two": worlds.buyer({"price": 1, "weight": 3}, id="two", budget=500),
            "us": worlds.buyer(id="us", region="US", currency="USD"),
            "far": worlds.buyer(id="far", region="XX"),
        }
        self.day = worlds.DAY

    def product(self, name):
        weight = worlds.weighed(self.draw.randrange(280, 400), date=self.some_day())
        return worlds.product(name, {"weight_g": (weight,)})

    def some_day(self):
        return worlds.DAY - timedelta(self.draw.randrange(60))

    def row(self, line):
        region, currency = self.draw.choice([("EU", "EUR"), ("EU", "EUR"), ("US", "USD")])
        day, offer = self.some_day(), self.draw.random() < 0.3
        return worlds.price(
            self.draw.choice(NAMES),
            self.draw.randrange(200, 900),
            line=line,
            date=day,
            region=region,
            currency=currency,
            kind="offer" if offer else "street",
            valid_until=day + timedelta(self.draw.randrange(12)) if offer else None,
        )

    @property
    def catalog(self):
        found = worlds.catalog([self.products[name] for name in sorted(self.products)], self.rows)
        return replace(found, prices=PriceRows(self.rows))

    # what may happen

    def a_price_is_seen(self, _):
        self.rows.append(self.row(len(self.rows) + 2))

    def a_line_is_put_right(self, _):
        at = self.draw.randrange(len(self.rows))
        self.rows[at] = replace(self.rows[at], amount=self.rows[at].amount + 7)

    def a_pedal_is_weighed_anew(self, _):
        name = self.draw.choice(sorted(self.products))
        self.products[name] = self.product(name)

    def a_notice_is_issued(self, _):
        name = self.draw.choice(sorted(self.products))
        self.products[name] = worlds.product(name, safety_notices=(NOTICE,))

    def a_pedal_goes_or_comes(self, _):
        name = self.draw.choice(NAMES)
        if name in self.products and len(self.products) > 1:
            del self.products[name]
        else:
            self.products[name] = self.product(name)
        self.rows = [row for row in self.rows if row.product in self.products]

    def a_buyer_thinks_again(self, _):
        self.buyers["one"] = worlds.buyer({"weight": self.draw.randrange(1, 9), "price": 3}, id="one")

    def a_day_passes(self, _):
        self.day += timedelta(1)

    def somebody_meddles(self, out):
        pages = sorted(out.rglob("*.html"))
        page = self.draw.choice(pages)
        if self.draw.random() < 0.5:
            page.unlink()
        else:
            page.write_bytes(page.read_bytes() + b"<!-- mine -->")

    def nothing_happens(self, _):
        pass


HAPPENINGS = [name for name in vars(World) if name.startswith(("a_", "somebody", "nothing"))]


def contents(folder: Path) -> dict[str, bytes]:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


@pytest.mark.parametrize("seed", range(3))
def test_a_kept_site_has_the_bytes_of_a_fresh_one(seed: int, tmp_path: Path) -> None:
    world, shelf, out = World(seed), Shelf(tmp_path / "shelf"), tmp_path / "site"
    spared = 0
    order = HAPPENINGS + HAPPENINGS
    world.draw.shuffle(order)
    for happening in ["nothing_happens", *order]:
        if out.exists():
            getattr(world, happening)(out)
        seen = []

        def watch(jobs, total, seen=seen):
            for job in jobs:
                seen.append(job.path)
                yield job

        publish(world.catalog, world.buyers, world.day, out, watch, shelf)
        fresh = gather(world.catalog, world.buyers, world.day)
        written = contents(out)
        assert {path: data for path, data in written.items() if path != NAME} == fresh, happening
        assert publish(world.catalog, world.buyers, world.day, out).changed == (), happening
        spared += len(fresh) - len([path for path in seen if path in fresh])
        if happening == "a_price_is_seen":
            assert "claims.html" not in seen, "no price stands in it"
    assert spared > 100


def test_where_nothing_happens_nothing_is_made(tmp_path: Path) -> None:
    world, shelf, out = World(1), Shelf(tmp_path / "shelf"), tmp_path / "site"
    publish(world.catalog, world.buyers, world.day, out, shelf=shelf)
    seen: list[str] = []

    def watch(jobs, total):
        seen.extend(job.path for job in jobs)
        assert total == 0
        return ()

    found = publish(world.catalog, world.buyers, world.day, out, watch, shelf)
    assert (found.changed, seen) == ((), [])
    assert found.files == len(contents(out))
