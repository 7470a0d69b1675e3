"""A price history as a picture: each offer as steps that hold until it is seen anew or runs out."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from itertools import pairwise
from typing import Any

from spindlewise.catalog.price_log import offered
from spindlewise.catalog.price_row import KINDS, Kind, PriceRow
from spindlewise.site.chart_style import TEXT_PX, filled, template
from spindlewise.site.palette import LIGHT
from spindlewise.site.picture import Picture
from spindlewise.units import money_text

WIDTH, HEIGHT = 640, 220
LABEL_PX = 17
"""Least distance of two labels at the right edge."""
INKS = {"list": "edge", "street": "accent", "offer": "caution-edge", "clearance": "ink"}
SHAPES = {"list": "square", "street": "circle", "offer": "triangle-up", "clearance": "diamond"}


@dataclass(frozen=True, slots=True)
class Seen:
    """One price of an offer, and the day up to which it stood."""

    day: date
    until: date
    amount: float
    text: str


@dataclass(frozen=True, slots=True)
class Offer:
    """All that was seen of one offer, oldest first; `stands` is whether it holds on the day."""

    seller: str
    kind: Kind
    tax: str
    stands: bool
    seen: tuple[Seen, ...]


@dataclass(frozen=True, slots=True)
class History:
    """What the picture shows: the offers of one product in one region and one currency."""

    currency: str
    day: date
    offers: tuple[Offer, ...]


def offers(rows: Sequence[PriceRow], day: date, currency: str) -> tuple[Offer, ...]:
    """The offers in these rows of one product and region that are in the currency, by kind and seller."""
    by_offer: dict[tuple[str, ...], list[PriceRow]] = {}
    for row in sorted(rows, key=lambda r: (r.date, r.line)):
        if row.currency == currency and row.date <= day:
            by_offer.setdefault(offered(row), []).append(row)
    found = [_offer(own, day) for own in by_offer.values()]
    return tuple(sorted(found, key=lambda o: (KINDS.index(o.kind), o.seller, o.tax)))


def _offer(rows: list[PriceRow], day: date) -> Offer:
    ends = [row.date for row in rows[1:]] + [day]
    seen = tuple(
        Seen(row.date, _stood_until(row, end), float(row.amount), money_text(row.amount, row.currency))
        for row, end in zip(rows, ends, strict=True)
    )
    last = rows[-1]
    return Offer(last.seller, last.kind, last.tax, last.in_force(day), seen)


def _stood_until(row: PriceRow, end: date) -> date:
    return min(end, row.valid_until) if row.valid_until else end


def price_picture(name: str, product: str, region: str, shown: History) -> Picture | None:
    """The picture; none where nothing was seen, or one price only."""
    if sum(len(offer.seen) for offer in shown.offers) < 2:
        return None
    prices = [seen.amount for offer in shown.offers for seen in offer.seen]
    texts = {seen.amount: seen.text for offer in shown.offers for seen in offer.seen}
    said = (
        f"{len(prices)} prices of the {product} seen in {region} by {shown.day}, of {len(shown.offers)} "
        f"offers, from {texts[min(prices)]} to {texts[max(prices)]}."
    )
    now = [o for o in shown.offers if o.stands]
    if now:
        lowest = min(now, key=lambda o: (o.seen[-1].amount, o.seller))
        said += f" The lowest in force is {lowest.seen[-1].text}, {lowest.kind}, {lowest.seller}."
    return Picture(name, f"Prices in {region}", said, price_drawing, shown)


def price_chart(shown: History) -> dict[str, Any]:
    """The chart's specification in the grammar of the chart library."""
    found: dict[str, Any] = filled(_template(), _words(shown))
    return found


def price_drawing(shown: History) -> dict[str, Any]:
    """The same as the library compiles it before it draws.

    A site has more of these than of all other charts, and a third of the time to draw one goes into compiling
    what differs in a few numbers: so one is compiled, and filled in.
    """
    words = _words(shown)
    (first, last), (low, high) = words["@days"], words["@amounts"]
    text = _compiled()
    for word, value in (("@first", first), ("@last", last), ("@title", words["@title"])):
        text = text.replace(word, value)  # dates and a currency, which need no escaping
    text = text.replace('"@low"', json.dumps(low)).replace('"@high"', json.dumps(high))
    found: dict[str, Any] = json.loads(text)
    for part in found["data"]:
        if "values" in part:
            part["values"] = words[part["values"]]
    return found


@cache
def _compiled() -> str:
    import vl_convert

    ends = {"@days": ["@first", "@last"], "@amounts": ["@low", "@high"]}
    return json.dumps(vl_convert.vegalite_to_vega(filled(_template(), ends)))


def _words(shown: History) -> dict[str, Any]:
    """What stands in the chart for each word of its template."""
    steps, points = [], []
    for number, offer in enumerate(shown.offers):
        ink, shape = LIGHT[INKS[offer.kind]], SHAPES[offer.kind]
        for place, seen in enumerate(offer.seen):
            said = f"{seen.day}: {seen.text}, tax {offer.tax}, {offer.kind}, {offer.seller}"
            points.append(
                {"day": _iso(seen.day), "amount": seen.amount, "shape": shape, "ink": ink, "said": said}
            )
            line = f"{number}-{_run(offer.seen, place)}"
            ends = {"amount": seen.amount, "line": line, "ink": ink}
            steps += [{**ends, "day": _iso(seen.day)}, {**ends, "day": _iso(seen.until)}]
    days = [seen.day for offer in shown.offers for seen in offer.seen]
    amounts = [seen.amount for offer in shown.offers for seen in offer.seen]
    span = max(amounts) - min(amounts) or max(amounts) or 1.0
    domain = [min(amounts) - 0.1 * span, max(amounts) + 0.1 * span]
    room = max((shown.day - min(days)).days // 40, 2)
    return {
        "@steps": steps,
        "@points": points,
        "@labels": _labels(shown, domain),
        "@amounts": domain,
        "@days": [_iso(min(days) - timedelta(room)), _iso(shown.day)],
        "@title": f"Price, {shown.currency}",
    }


def _iso(day: date) -> str:
    return day.isoformat()


def _run(seen: Sequence[Seen], place: int) -> int:
    """Which unbroken run a price belongs to: a new one begins where the offer had run out before."""
    return sum(1 for before, now in pairwise(seen[: place + 1]) if before.until < now.day)


def _labels(shown: History, domain: list[float]) -> list[dict[str, Any]]:
    """The offers that stand, named at the right edge, moved apart where they would touch."""
    scale = HEIGHT / (domain[1] - domain[0])
    named = sorted(
        ((domain[1] - offer.seen[-1].amount) * scale, f"{offer.kind}, {offer.seller}")
        for offer in shown.offers
        if offer.stands
    )
    placed: list[float] = []
    for at, _ in named:
        placed.append(max(at, placed[-1] + LABEL_PX) if placed else at)
    over = max(0.0, placed[-1] - HEIGHT) if placed else 0.0
    for number in range(len(placed) - 1, -1, -1):
        limit = placed[number + 1] - LABEL_PX if number + 1 < len(placed) else placed[number] - over
        placed[number] = min(placed[number], limit)
    return [
        {"amount": domain[1] - at / scale, "text": text} for at, (_, text) in zip(placed, named, strict=True)
    ]


@cache
def _template() -> dict[str, Any]:
    import altair as alt

    steps, points, labels = (
        alt.Chart(alt.InlineData(values=f"@{part}")) for part in ("steps", "points", "labels")
    )
    x = alt.X(
        "day:T",
        title=None,
        # days have no time zone: read as UTC, they stay the days that they are
        scale=alt.Scale(type="utc", domain=["@days"], nice=False),
        axis=alt.Axis(format="%Y-%m", tickCount=6, grid=False, labelFlush=False),
    )
    y = alt.Y(
        "amount:Q",
        title="@title",
        scale=alt.Scale(domain=["@amounts"], nice=False, zero=False),
        axis=alt.Axis(tickCount=5),
    )
    ink = alt.Color("ink:N", scale=None)
    chart = alt.layer(
        steps.mark_line(interpolate="step-after", strokeWidth=2, aria=False).encode(
            x=x, y=y, detail="line:N", color=ink
        ),
        points.mark_point(filled=True, size=60, opacity=1).encode(
            x=x, y=y, shape=alt.Shape("shape:N", scale=None), color=ink, description="said:N"
        ),
        labels.mark_text(align="left", dx=8, fontSize=TEXT_PX, color=LIGHT["ink"]).encode(
            x=alt.value(WIDTH), y=y, text="text:N"
        ),
    ).properties(width=WIDTH, height=HEIGHT)
    return template(chart)
