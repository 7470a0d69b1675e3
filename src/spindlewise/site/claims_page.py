"""The page that holds claims to what was measured: every claim of the catalog that anybody has checked."""

from dataclasses import dataclass

from spindlewise.answer.claims import weight_standing
from spindlewise.answer.desk import Desk
from spindlewise.catalog.figure import Known, weight_g
from spindlewise.catalog.product import Product
from spindlewise.render.blocks import Column, Table
from spindlewise.site.chart_claims import Strayed, claims_picture
from spindlewise.site.claims import Claim, claims
from spindlewise.site.figured import Figured, figured
from spindlewise.site.shown import plus_minus_text, signed_text
from spindlewise.units import grams_text


@dataclass(frozen=True, slots=True)
class ClaimsPage:
    """What the page shows: the weights as a picture, then each checked claim of each product."""

    weights: tuple[Figured, ...]
    checked: tuple[tuple[Product, tuple[Claim, ...]], ...]
    claims: int
    within: int
    """So many claims lie within the plus-minus of what was measured."""


def claims_page(desk: Desk) -> ClaimsPage:
    """Gather the page."""
    checked = tuple(
        (product, found) for product in desk.catalog.products.values() if (found := claims(product, desk.day))
    )
    every = [claim for _, found in checked for claim in found]
    return ClaimsPage(
        _weights(desk), checked, len(every), sum(claim.verdict == "within the plus-minus" for claim in every)
    )


def _weights(desk: Desk) -> tuple[Figured, ...]:
    strayed, rows = [], []
    for product in desk.catalog.products.values():
        claim = weight_g(product, desk.day, "claimed")
        if not isinstance(claim, Known):
            continue
        name = f"{product.maker} {product.name}"
        found = _measured(desk, product)
        if found is None:
            rows.append((name, grams_text(claim.value), "not weighed", "", "", "not known"))
            continue
        value, low, high, weighed = found
        stray = value - claim.value
        spread = plus_minus_text(round((high - low) / 2, 1), "g")
        word = "weighed" if weighed else "predicted"
        said = f"{name}: {word} {grams_text(value)}, claimed {grams_text(claim.value)}"
        strayed.append(Strayed(name, low - claim.value, stray, high - claim.value, weighed, said))
        rows.append(
            (
                name,
                grams_text(claim.value),
                f"{word} {grams_text(value)}",
                spread,
                signed_text(round(stray, 1), "g"),
                _verdict(low, high, claim.value),
            )
        )
    columns = (
        Column("Pedal"),
        Column("Claimed", "right"),
        Column("Weighed or predicted", "right"),
        Column("Plus-minus", "right"),
        Column("Against the claim", "right"),
        Column("Verdict"),
    )
    caption = (
        "0 is what the maker claims. A filled disc is what our scales say, with its plus-minus as a bar; an "
        "open diamond is what the record of claims and weighings leads to expect of a pedal that nobody has "
        "weighed."
    )
    table = Table("Weight of the pair, batteries in, cleats off", columns, tuple(rows))
    return figured(claims_picture(strayed), caption, table)


def _measured(desk: Desk, product: Product) -> tuple[float, float, float, bool] | None:
    """Value, low, high, and whether it was weighed; a bare claim that predicts nothing gives none."""
    weighing = weight_g(product, desk.day, "measured")
    if isinstance(weighing, Known):
        return weighing.value, weighing.low, weighing.high, True
    standing = weight_standing(product, desk.day, desk.record)
    if standing.origin != "predicted" or not isinstance(standing.value, float):
        return None
    return standing.value, standing.low or 0.0, standing.high or 0.0, False


def _verdict(low: float, high: float, claimed: float) -> str:
    if low <= claimed <= high:
        return "within the plus-minus"
    return "heavier than claimed" if low > claimed else "lighter than claimed"
