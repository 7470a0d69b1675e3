import worlds
from spindlewise.site.claims import claims


def made(*weights, **observations):
    return worlds.product("heron", {"weight_g": weights, **observations})


def by_title(product):
    return {claim.title: claim for claim in claims(product, worlds.DAY)}


def test_heavier_than_claimed():
    product = made(worlds.weighed(316, 1.0), worlds.weighed(312, "unknown", grade="claimed"))
    claim = by_title(product)["Weight"]
    assert (claim.claimed, claim.measured, claim.difference) == ("312 g", "316 g ± 1 g", "+4 g")
    assert claim.verdict == "heavier than claimed"


def test_within_the_plus_minus():
    product = made(worlds.weighed(312.5, 1.0), worlds.weighed(312, "unknown", grade="claimed"))
    assert by_title(product)["Weight"].verdict == "within the plus-minus"


def test_lighter_than_claimed():
    product = made(worlds.weighed(300, 1.0), worlds.weighed(312, "unknown", grade="claimed"))
    assert by_title(product)["Weight"].verdict == "lighter than claimed"


def test_unlike_bases_are_never_compared():
    without = worlds.seen(
        290, {"count": "pair", "batteries": "out", "cleats": "off"}, grade="claimed", plus_minus=1.0
    )
    assert "Weight" not in by_title(made(worlds.weighed(316), without))


def test_the_newest_of_each_counts_and_the_future_is_not_seen():
    from datetime import date

    product = made(
        worlds.weighed(316),
        worlds.weighed(320, date=date(2026, 5, 1)),
        worlds.weighed(330, date=date(2027, 5, 1)),
        worlds.weighed(312, grade="claimed"),
    )
    found = [claim for claim in claims(product, worlds.DAY) if claim.title == "Weight"]
    assert [claim.measured for claim in found] == ["320 g ± 1 g"]


def test_a_claim_alone_is_no_comparison():
    assert "Weight" not in by_title(made(worlds.weighed(312, grade="claimed")))
    assert "Weight" not in by_title(
        made(
            worlds.weighed(316),
            worlds.seen("unknown", {"count": "pair", "batteries": "in", "cleats": "off"}, grade="claimed"),
        )
    )
