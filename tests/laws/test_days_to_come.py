"""Laws of the as-of date: what is dated later changes nothing before, and order decides ties only."""

from datetime import date, timedelta
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from spindlewise.catalog.as_of import links, standing_notices, state
from spindlewise.catalog.figure import Absent, figure, ingress, stack_mm, weight_g
from spindlewise.catalog.price_log import newest, price_falls, prices_in_force
from spindlewise.catalog.product import Product
from worlds import price, product, seen, weighed

START = date(2026, 1, 1)
DAYS = st.integers(0, 300).map(lambda n: START + timedelta(days=n))
GRADES = st.sampled_from(["measured", "reported", "claimed"])
CELLS = {"count": "pair", "batteries": "in", "cleats": "off"}
BASES = st.sampled_from([CELLS, {**CELLS, "cleats": "on"}, {**CELLS, "batteries": "unknown"}])


@st.composite
def weighings(draw: st.DrawFn) -> dict[str, Any]:
    value = draw(st.sampled_from([330.0, 340.0, 350.0, "unknown"]))
    return seen(value, draw(BASES), grade=draw(GRADES), date=draw(DAYS), plus_minus=1.0)


@st.composite
def limits(draw: st.DrawFn) -> dict[str, Any]:
    value = draw(st.sampled_from([90.0, 110.0, "none", "unknown"]))
    return seen(value, grade=draw(GRADES), date=draw(DAYS))


@st.composite
def codes(draw: st.DrawFn) -> dict[str, Any]:
    return seen(
        draw(st.sampled_from(["IPX5", "IPX7", "none", "unknown"])), grade=draw(GRADES), date=draw(DAYS)
    )


@st.composite
def statuses(draw: st.DrawFn) -> dict[str, Any]:
    return {"state": draw(st.sampled_from(["current", "clearance"])), "since": draw(DAYS), "source": "s"}


@st.composite
def statements(draw: st.DrawFn) -> dict[str, Any]:
    how = draw(st.sampled_from(["both sides", "two channels", "one side doubled", "none", "unknown"]))
    firmware = draw(st.sampled_from(["1.0", "2.0", "2.10", "unknown"]))
    return {"what": "power", "how": how, "since": draw(DAYS), "firmware": firmware, "source": "s"}


@st.composite
def notices(draw: st.DrawFn) -> dict[str, Any]:
    day = draw(DAYS)
    ended = draw(st.none() | st.integers(0, 100))
    over = "none" if ended is None else day + timedelta(days=ended)
    return {"date": day, "ended": over, "what": "w", "action": "a", "issued_by": "i"}


def _made(
    weights: list[dict[str, Any]],
    limit: list[dict[str, Any]],
    code: list[dict[str, Any]],
    status: list[dict[str, Any]],
    carried: list[dict[str, Any]],
    notice: list[dict[str, Any]],
) -> Product:
    return product(
        "moor-peak",
        {"weight_g": tuple(weights), "rider_limit_kg": tuple(limit), "ingress": tuple(code)},
        statuses=tuple(status),
        links=({"protocol": "ANT+", "carries": tuple(carried)},),
        safety_notices=tuple(notice) or "none",
    )


def _view(made: Product, day: date) -> tuple[object, ...]:
    return (
        weight_g(made, day),
        weight_g(made, day, "measured"),
        figure(made, "rider_limit_kg", day),
        ingress(made, day),
        state(made, day),
        links(made, day),
        standing_notices(made, day),
    )


KNOWN = st.tuples(
    *(
        st.lists(kind, min_size=least, max_size=4)
        for kind, least in (
            (weighings(), 1),
            (limits(), 1),
            (codes(), 1),
            (statuses(), 1),
            (statements(), 1),
            (notices(), 0),
        )
    )
)
MORE = st.tuples(weighings(), limits(), codes(), statuses(), statements(), notices())


@settings(deadline=None, max_examples=150)
@given(KNOWN, MORE, DAYS)
def test_what_is_dated_later_changes_nothing_before(
    known: tuple[list[dict[str, Any]], ...], more: tuple[dict[str, Any], ...], day: date
) -> None:
    later = [{**one, ("since" if "since" in one else "date"): day + timedelta(days=1)} for one in more]
    for one in later:
        if one.get("ended") not in (None, "none"):
            one["ended"] = day + timedelta(days=9)
    assert _view(_made(*known), day) == _view(
        _made(*([*a, b] for a, b in zip(known, later, strict=True))), day
    )


@settings(deadline=None, max_examples=100)
@given(KNOWN, DAYS, st.randoms(use_true_random=False))
def test_where_no_two_entries_share_grade_and_day_their_order_says_nothing(
    known: tuple[list[dict[str, Any]], ...], day: date, order: Any
) -> None:
    for entries in known[:5]:
        dated = [(e.get("grade"), e.get("date", e.get("since"))) for e in entries]
        assume(len(set(dated)) == len(dated))
    shuffled = [order.sample(entries, len(entries)) for entries in known]
    before, after = _view(_made(*known), day), _view(_made(*shuffled), day)
    # The words of an absent figure may name another observation; what is known is the same.
    for one, other in zip(before[:4], after[:4], strict=True):
        if isinstance(one, Absent):
            assert isinstance(other, Absent)
            assert one.kind == other.kind
        else:
            assert one == other
    assert before[4:6] == after[4:6]
    assert set(map(repr, before[6])) == set(map(repr, after[6]))  # type: ignore[call-overload]


@settings(deadline=None, max_examples=100)
@given(st.lists(DAYS, min_size=1, max_size=6), DAYS)
def test_prices_of_later_days_change_nothing_before(days: list[date], day: date) -> None:
    rows = [price("moor-peak", 500 + 7 * n, line=n + 2, date=dated) for n, dated in enumerate(days)]
    seen_by_then = [row for row in rows if row.date <= day]
    assert newest(rows, "EU", day) == newest(seen_by_then, "EU", day)
    assert prices_in_force(rows, "EU", day) == prices_in_force(seen_by_then, "EU", day)
    assert price_falls(rows, "EU", START, day) == price_falls(seen_by_then, "EU", START, day)


@settings(deadline=None, max_examples=50)
@given(st.floats(0.5, 40), st.floats(0, 2))
def test_a_figure_with_a_plus_minus_lies_between_its_ends(value: float, spread: float) -> None:
    made = product("moor-peak", {"stack_mm": (seen(value, {"span": "axis to sole"}, plus_minus=spread),)})
    found = stack_mm(made, date(2026, 11, 20), "axis to sole")
    assert not isinstance(found, Absent)
    assert found.low <= found.value <= found.high


def test_an_observation_of_the_day_itself_is_seen() -> None:
    made = product("moor-peak", {"weight_g": (weighed(346.0, date=START),)})
    assert not isinstance(weight_g(made, START), Absent)
    assert isinstance(weight_g(made, START - timedelta(days=1)), Absent)
