import worlds
from spindlewise.answer.break_evens import BreakEvens
from spindlewise.answer.reply import reply_to
from spindlewise.decide.break_even import BreakEven, Outcome
from spindlewise.site.buyer_places import buyer_places, first_at


def places(product, heron=500, siskin=400, buyer=None, **more):
    desk = worlds.desk(
        [worlds.product("heron", **more), worlds.product("siskin")],
        [worlds.price("heron", heron), worlds.price("siskin", siskin, line=3)],
    )
    return buyer_places("tester", reply_to(desk, buyer or worlds.buyer()))[product]


def test_the_pick_stands_first_up_to_the_price_at_which_the_other_leads():
    """Two that differ in price alone: the dearer one draws level at the price of the cheaper one."""
    first, second = places("siskin"), places("heron")
    assert (first.is_pick, first.first_at) == (True, "stands first, up to EUR 500.00")
    assert (second.is_pick, second.first_at) == (False, "level at EUR 400.00 or less")
    assert second.because == ()


def test_what_is_over_the_budget_is_in_at_the_budget_or_below():
    found = places("heron", buyer=worlds.buyer(budget=450))
    assert found.rank is None
    assert found.first_at == "in and level at EUR 400.00 or less"
    assert found.because == ("it costs EUR 500.00, EUR 50.00 over the budget",)


def test_two_that_are_the_same_are_level():
    found = places("siskin", heron=400)
    assert found.level_with_pick or found.is_pick
    assert places("heron", heron=400).is_pick != found.is_pick


def test_what_a_receiver_shows_is_told_of_each_receiver():
    assert places("heron").shows == (("head unit", "both sides"),)
    unstated = places("heron", buyer=worlds.buyer(receivers=()))
    assert unstated.shows == (("any receiver (none stated)", "both sides"),)


def test_the_cell_for_every_outcome():
    def cell(outcome, amount=None):
        return first_at(
            BreakEvens({"heron": BreakEven(outcome, None, amount)}, "siskin", None, {}), "heron", "EUR"
        )

    assert cell(Outcome.ANY_PRICE) == "level at any price"
    assert cell(Outcome.HELD_BACK) == "held back at any price"
    assert cell(Outcome.NO_PRICE) == "no price"
    assert (
        first_at(BreakEvens({}, "heron", BreakEven(Outcome.ANY_PRICE), {}), "heron", "EUR") == "stands first"
    )
