"""The comparison as plain text to stand under a video: who gave what to whom first, within 5,000 bytes."""

from collections.abc import Sequence

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Placed, Ranking
from spindlewise.catalog.as_of import standing_notices
from spindlewise.render.naming import Naming, listed, naming
from spindlewise.render.words_rank import weights_words
from spindlewise.site.places import place_text
from spindlewise.site.shown import shown
from spindlewise.units import money_text, points_text

MOST_BYTES = 5_000
"""What fits under a video on the common platforms (common practice, no source)."""
MOST_NAMED = 60
LEAST_SAID = 120
"""So many characters of a title or a notice fit whatever letters they are in."""


def description_text(desk: Desk, ranking: Ranking) -> bytes:
    """The text, in UTF-8: disclosures of every pedal that is named, then the pedals, as many as fit.

    The disclosures and the notices are never cut; pedals from the end of the order are, and where even
    none fits, what the catalog says of itself.
    """
    names = naming(desk.catalog)
    for count in range(min(len(ranking.placed), MOST_NAMED), -1, -1):
        text = _text(desk, ranking, ranking.placed[:count], names).encode()
        if len(text) <= MOST_BYTES:
            return text
    return _text(desk, ranking, (), names, LEAST_SAID).encode()


def _text(
    desk: Desk, ranking: Ranking, named: Sequence[Placed], names: Naming, most_said: int | None = None
) -> str:
    settings = desk.catalog.settings
    region, title = (
        text[:most_said] for text in (settings.regions[ranking.buyer.region].name, settings.title)
    )
    parts = ["\n".join(["DISCLOSURE", *_disclosures(desk, named, names)])]
    if settings.invented != "no":
        parts.append(f"INVENTED: {settings.invented[:most_said]}")
    parts.append(
        f"{title}: power pedals, {region}. Prices as of {ranking.day.isoformat()}, tax in.\n"
        f"Scores run from 0 to 100. {weights_words(ranking, names)}"
    )
    parts.append("\n".join(_line(desk, placed, names) for placed in named) or "Nothing is for sale.")
    left = len(ranking.placed) - len(named)
    if left:
        parts.append(f"{left} more did not fit here; the site has them.")
    # angle brackets are refused by some places that such a text is pasted into
    return "\n\n".join(parts).replace("<", "‹").replace(">", "›") + "\n"


def _disclosures(desk: Desk, named: Sequence[Placed], names: Naming) -> list[str]:
    by_terms: dict[str, list[str]] = {}
    for placed in named:
        told = desk.catalog.products[placed.product].disclosure
        returned = "" if told.returned == "not applicable" else f", {told.returned}"
        terms = f"{told.unit}{returned}; commission: {told.commission}"
        by_terms.setdefault(terms, []).append(names.product(placed.product))
    lines = [f"{terms[:1].upper()}{terms[1:]}: {listed(who)}." for terms, who in sorted(by_terms.items())]
    return [*(lines or ["No pedal is named here."]), "None of it enters a score."]


def _line(desk: Desk, placed: Placed, names: Naming) -> str:
    row = placed.paid.row
    until = f", until {row.valid_until.isoformat()}" if row.valid_until else ""
    weight = placed.standings.get("weight")
    weighs = ""
    if weight is not None:
        figure = shown(weight)
        weighs = f"; {figure.text} {figure.origin}" if figure.is_known else f"; weight {figure.text}"
    price = money_text(placed.paid.amount, placed.paid.currency)
    score = f"score {points_text(placed.score.expected)}"
    told = f"{names.product(placed.product)}: {price} ({row.kind}, {row.seller}{until}); {score}{weighs}"
    for notice in standing_notices(desk.catalog.products[placed.product], desk.day):
        told += f". SAFETY NOTICE of {notice.date.isoformat()}: {notice.what} {notice.action}"
    place = place_text(placed)
    return f"{f'{place}.' if place else 'Held back:'} {told}"
