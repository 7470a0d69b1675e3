"""Everything on a buyer's page: what was asked and stated, the places, who is out, and the reply in words."""

from dataclasses import dataclass, replace

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Excluded, Placed
from spindlewise.answer.reply import Reply
from spindlewise.buyer.buyer import Buyer
from spindlewise.render.blocks import Section, Table
from spindlewise.render.fragment import PAGE, can_be_linked, fragment
from spindlewise.render.words_reply import reply_sections
from spindlewise.site.places import place_text
from spindlewise.site.region_table import PriceShown, price_shown
from spindlewise.site.shown import Shown, shown
from spindlewise.units import money_text, number_text

SHOWN_ELSEWHERE = ("question", "pick", "notices", "invented", "weigh")
"""Parts of a reply that the page has in places of its own."""


@dataclass(frozen=True, slots=True)
class CriterionCell:
    """One figure of one place, with its merit to sort words by."""

    criterion: str
    title: str
    figure: Shown
    merit: float


@dataclass(frozen=True, slots=True)
class PlaceRow:
    """One place of the ranking; `cells` are its figures in the order of the weights, price apart."""

    placed: Placed
    place: str
    price: PriceShown
    cells: tuple[CriterionCell, ...]


@dataclass(frozen=True, slots=True)
class BuyerView:
    """A buyer's page; of a buyer who keeps body, rider weight and balance private, the reply knows none."""

    buyer: Buyer
    stated: tuple[tuple[str, str], ...]
    weights: tuple[tuple[str, str, float, str], ...]
    """Criterion, its title, its share in percent and in words, in the order of the table's columns."""
    places: tuple[PlaceRow, ...]
    excluded: tuple[Excluded, ...]
    pick: str
    """The pick's id, empty where there is none."""
    weigh: str
    """Where this very question can be turned by anybody; empty where the page cannot ask it."""
    opening: Section
    notices: tuple[Section, ...]
    rest: tuple[Section, ...]


def buyer_view(desk: Desk, reply: Reply) -> BuyerView:
    """Gather the page of one buyer."""
    ranking = reply.ranking
    titles = desk.yardstick.titles
    shares = ranking.weighed.by_name
    criteria = ranking.weighed.criteria
    sections = reply_sections(desk.catalog, reply)
    return BuyerView(
        buyer=ranking.buyer,
        stated=_stated(desk, ranking.buyer),
        weights=tuple((k, titles[k], 100 * shares[k], number_text(100 * shares[k], 0)) for k in criteria),
        places=tuple(
            PlaceRow(
                p,
                place_text(p),
                price_shown(desk, p.paid),
                tuple(
                    CriterionCell(k, titles[k], shown(p.standings[k]), p.merits[k].expected)
                    for k in criteria
                    if k != "price"
                ),
            )
            for p in ranking.placed
        ),
        excluded=ranking.excluded,
        pick=reply.pick.product if reply.pick else "",
        weigh=PAGE + fragment(ranking.buyer) if can_be_linked(desk.catalog, ranking.buyer) else "",
        opening=next(s for s in sections if s.name == "pick"),
        notices=tuple(s for s in sections if s.name == "notices"),
        rest=tuple(_beside_table(s) for s in sections if s.name not in SHOWN_ELSEWHERE),
    )


def _beside_table(section: Section) -> Section:
    """The page's own table has all the figures of all places, so the reply's shorter one is left out."""
    if section.name != "figures":
        return section
    return replace(section, blocks=tuple(b for b in section.blocks if not isinstance(b, Table)))


def _stated(desk: Desk, buyer: Buyer) -> tuple[tuple[str, str], ...]:
    needs, riding = buyer.needs, buyer.riding
    budget = (
        "no limit"
        if buyer.budget_amount is None
        else f"up to {money_text(buyer.budget_amount, buyer.currency)}"
    )
    region = desk.catalog.settings.regions.get(buyer.region)
    present = desk.catalog.products.get(buyer.present_pedals)
    lines = [
        ("Buys in", f"{region.name if region else buyer.region}, pays in {buyer.currency}, tax in"),
        ("Budget", budget),
        ("Rides now", f"{present.maker} {present.name}" if present else f"{buyer.present_pedals}"),
    ]
    for receiver in buyer.receivers:
        heard = " and ".join(receiver.protocols)
        lines.append(("Records with", f"{receiver.name}, hears {heard}"))
    if not buyer.receivers:
        lines.append(("Records with", "not stated; the best case is taken"))
    if not isinstance(needs.rider_mass_kg, str):
        lines.append(("Rider with kit", f"{number_text(needs.rider_mass_kg, 0)} kg"))
    if not isinstance(needs.shoes, str):
        lines.append(("Shoes", f"{needs.shoes.bolts} cleats"))
    must = _must(buyer)
    if must:
        lines.append(("Must have", "; ".join(must)))
    if not isinstance(riding.hours_per_year, str):
        years = "" if isinstance(riding.years, str) else f", for {number_text(riding.years, 0)} years"
        lines.append(("Rides", f"{number_text(riding.hours_per_year, 0)} hours a year{years}"))
    if buyer.private == "kept":
        lines.append(("Not on this page", "rider weight, body and balance: kept private"))
    return tuple(lines)


def _must(buyer: Buyer) -> list[str]:
    needs = buyer.needs
    must = [] if needs.kind == "any" else [f"a {needs.kind}"]
    if needs.reading == "both sides":
        must.append("both sides measured and shown")
    if needs.balance == "needed":
        must.append("balance shown")
    if needs.water != "not stated":
        must.append(f"protection of {needs.water} or better")
    if not isinstance(needs.weight_g_at_most, str):
        must.append(f"at most {number_text(needs.weight_g_at_most, 0)} g")
    if not isinstance(needs.running_hours_at_least, str):
        must.append(f"at least {number_text(needs.running_hours_at_least, 0)} h of running time")
    if not isinstance(needs.warranty_years_at_least, str):
        must.append(f"at least {number_text(needs.warranty_years_at_least, 0)} years of warranty")
    if not isinstance(needs.states, str):
        must.append(f"{' or '.join(needs.states)} in the maker's range")
    return must
