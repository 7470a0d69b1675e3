import random
from dataclasses import replace
from datetime import date, timedelta

import worlds
from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.answer.ranking import rank
from spindlewise.site.pick_moves import Move, pick_steps
from spindlewise.site.touched import touched

SINCE = date(2026, 8, 1)


def pick(catalog, buyer, day):
    try:
        found = rank(Desk(catalog, day), buyer).pick
    except NoMarket:
        return None
    return found.product if found else None


def pick_moves(catalog, buyers, since, day, trail=()):
    steps = pick_steps(catalog, buyers, touched(catalog, since, day), trail)
    return {step.day: step.moves for step in steps}


def plain_twin(catalog, buyers, since, day):
    """Everything ranked anew on every day."""
    found = {}
    before = {name: pick(catalog, buyer, since) for name, buyer in sorted(buyers.items())}
    for step in range(1, (day - since).days + 1):
        when = since + timedelta(step)
        now = {name: pick(catalog, buyer, when) for name, buyer in sorted(buyers.items())}
        moves = tuple(Move(name, before[name], now[name]) for name in now if before[name] != now[name])
        if moves:
            found[when] = moves
        before = now
    return found


def moves(catalog, buyers, since=SINCE, day=worlds.DAY):
    found = pick_moves(catalog, buyers, since, day)
    return {when: told for when, told in found.items() if told}


def random_world(seed):
    draw = random.Random(seed)
    names = ["heron", "siskin", "plover", "dunlin", "avocet"]

    def day():
        return SINCE + timedelta(draw.randrange(-20, 60))

    notice = {"date": day(), "ended": "none", "what": "It cracks.", "action": "Stop.", "issued_by": "maker"}
    products = [
        worlds.product(
            name,
            {"weight_g": (worlds.weighed(draw.randrange(280, 400), date=day()),)},
            safety_notices=(notice,) if draw.random() < 0.3 else "none",
        )
        for name in names
    ]
    rows = []
    for line in range(25):
        offer = draw.random() < 0.4
        when = day()
        rows.append(
            worlds.price(
                draw.choice(names),
                draw.randrange(200, 900),
                line=line + 2,
                date=when,
                region=draw.choice(["EU", "EU", "US"]),
                kind="offer" if offer else "street",
                valid_until=when + timedelta(draw.randrange(12)) if offer else None,
            )
        )
    return worlds.catalog(products, rows)


def test_the_same_as_ranking_everything_every_day():
    buyers = {
        "one": worlds.buyer(id="one"),
        "two": worlds.buyer({"price": 1, "weight": 3}, id="two", budget=500),
        "us": worlds.buyer(id="us", region="US", currency="USD"),
        "far": worlds.buyer(id="far", region="XX"),
    }
    told = 0
    for seed in range(6):
        catalog = random_world(seed)
        end = SINCE + timedelta(60)
        found = moves(catalog, buyers, SINCE, end)
        assert found == plain_twin(catalog, buyers, SINCE, end), seed
        told += sum(map(len, found.values()))
    assert told > 30


def test_the_demo_s_pick_moves_on_the_days_that_its_catalog_is_made_for(site):
    found = moves(site.catalog, site.buyers, date(2026, 11, 10), site.day)
    assert Move("club-racer", "tarnquell-liskar-duo", "brellowick-ferrowen-2") in found[date(2026, 11, 20)]


def test_no_days_no_moves():
    catalog = worlds.catalog([worlds.product("heron")], [worlds.price("heron", 500)])
    assert moves(catalog, {"tester": worlds.buyer()}, date(2026, 11, 1)) == {}


def test_the_trail_of_an_earlier_publish_leads_to_the_same_picks():
    """A line more in the log: days before its date are not gone over again, and nothing else differs."""
    buyers = {"one": worlds.buyer(id="one"), "us": worlds.buyer(id="us", region="US", currency="USD")}
    end = SINCE + timedelta(60)
    held = 0
    for seed in range(6):
        catalog = random_world(seed)
        rows = list(catalog.prices)
        for cut in (len(rows) - 1, len(rows) // 2):
            fewer = replace(catalog, prices=tuple(rows[:cut]))
            trail = pick_steps(fewer, buyers, touched(fewer, SINCE, end))
            days = touched(catalog, SINCE, end)
            found = pick_steps(catalog, buyers, days, trail)
            assert found == pick_steps(catalog, buyers, days), seed
            held += sum(any(step is old for old in trail) for step in found)
    assert held > 20
    assert pick_steps(catalog, buyers, {}, trail) == ()
