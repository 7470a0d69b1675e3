"""The ranking: places, level products, what is out, and what a safety notice does."""

from datetime import date

import pytest

import worlds
from spindlewise.answer.market import NoMarket
from spindlewise.answer.ranking import rank

NOTICE = {
    "date": date(2026, 5, 1),
    "ended": "none",
    "what": "The axle may crack.",
    "action": "Stop riding.",
    "issued_by": "the maker",
}


def of(name, weight, spread=1.0, **changes):
    return worlds.product(name, {"weight_g": (worlds.weighed(weight, spread),)}, **changes)


def ranked(products, prices, **buyer):
    return rank(worlds.desk(products, prices), worlds.buyer(**buyer))


def test_the_cheaper_of_two_alike_stands_first_and_the_difference_is_told_by_criterion():
    found = ranked(
        [of("heron", 330), of("siskin", 300)], [worlds.price("heron", 500), worlds.price("siskin", 650)]
    )

    assert [p.product for p in found.placed] == ["heron", "siskin"]
    against = found.against("siskin", "heron")
    assert against.total == pytest.approx(found.placed[1].score.expected - found.placed[0].score.expected)
    assert [(d.criterion, d.points > 0) for d in against.parts][:2] == [("price", False), ("weight", True)]


def test_two_within_their_uncertainty_are_level_and_share_a_rank():
    found = ranked(
        [of("heron", 330, 8.0), of("siskin", 332, 8.0), of("gannet", 420, 1.0)],
        [worlds.price(n, 500) for n in ("heron", "siskin", "gannet")],
    )

    assert [(p.product, p.rank, p.level_with) for p in found.placed] == [
        ("heron", 1, ("siskin",)),
        ("siskin", 1, ("heron",)),
        ("gannet", 3, ()),
    ]


def test_a_safety_notice_keeps_the_best_out_of_first_place():
    found = ranked(
        [of("heron", 330), of("risky", 290, safety_notices=(NOTICE,))],
        [worlds.price("heron", 900), worlds.price("risky", 300)],
    )

    assert [(p.product, p.held_back) for p in found.placed] == [("heron", False), ("risky", True)]
    assert found.pick.product == "heron"


def test_where_all_are_held_back_nothing_is_picked():
    found = ranked([of("risky", 290, safety_notices=(NOTICE,))], [worlds.price("risky", 300)])

    assert found.pick is None
    assert len(found.placed) == 1


def test_a_lifted_notice_holds_nothing_back():
    lifted = {**NOTICE, "ended": date(2026, 11, 20)}
    found = ranked([of("healed", 290, safety_notices=(lifted,))], [worlds.price("healed", 300)])

    assert found.pick.product == "healed"


def test_what_is_out_says_why_and_an_empty_ranking_has_no_pick():
    found = ranked([of("heron", 330)], [worlds.price("heron", 500)], budget=100)

    assert [(e.product, [f.because for f in e.because]) for e in found.excluded] == [
        ("heron", ["it costs EUR 500.00, EUR 400.00 over the budget"])
    ]
    assert (found.placed, found.pick) == ((), None)


def test_ownership_may_be_weighed_in_place_of_price():
    cells = {
        "type": "CR2032",
        "count": 2,
        "cell_weight_g": 3.0,
        "spare_prices": (
            {
                "date": date(2026, 1, 1),
                "region": "EU",
                "currency": "EUR",
                "amount": 10.0,
                "tax": "in",
                "source": "shop",
            },
        ),
    }
    charged = {
        "type": "built-in",
        "count": 2,
        "cell_weight_g": "not applicable",
        "spare_prices": "not applicable",
    }
    found = ranked(
        [of("heron", 330, battery=cells), of("siskin", 330, battery=charged)],
        [worlds.price("heron", 500), worlds.price("siskin", 505)],
        points={"ownership": 1},
        riding={"years": 3.0, "hours_per_year": 300.0},
    )

    # 900 hours on cells that last 60: fourteen sets beside the first, 140 EUR
    assert [(p.product, p.standings["ownership"].value) for p in found.placed] == [
        ("siskin", 505.0),
        ("heron", 640.0),
    ]


def test_an_unknown_region_or_a_currency_without_a_rate_cannot_be_served():
    with pytest.raises(NoMarket, match="knows no region XX; it knows EU, JP, US"):
        ranked([of("heron", 330)], [], region="XX")
    with pytest.raises(NoMarket, match="no rate from SEK to EUR"):
        ranked([of("heron", 330)], [], currency="SEK")


def test_buyers_of_every_region_see_their_own_money():
    products = [of("heron", 330), of("siskin", 330)]
    prices = [
        worlds.price("heron", 400, region="US", currency="USD", tax="out"),
        worlds.price("siskin", "60000", region="JP", currency="JPY"),
    ]

    assert [str(p.paid.amount) for p in ranked(products, prices, region="US", currency="USD").placed] == [
        "430.00"
    ]
    assert [str(p.paid.amount) for p in ranked(products, prices, region="JP", currency="JPY").placed] == [
        "60000"
    ]
