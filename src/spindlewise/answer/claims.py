"""What a maker's claim is worth, by the catalog's own record of claimed against weighed."""

from datetime import date

from spindlewise.answer.figures import as_standing
from spindlewise.answer.standing import Standing
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.figure import Known, weight_g
from spindlewise.catalog.product import Product
from spindlewise.decide.claims_record import ClaimPair, ClaimsRecord, Fallback, Prediction, claims_record
from spindlewise.units import grams_text, number_text, percent_text


def weight_record(catalog: Catalog, day: date) -> ClaimsRecord:
    """The record of the whole catalog on the day: every product of which claim and weighing are both known.

    It is evidence: it never depends on who asks or on which candidates pass a buyer's needs.
    """
    pairs = []
    for product in catalog.products.values():
        claim, weighing = weight_g(product, day, "claimed"), weight_g(product, day, "measured")
        if isinstance(claim, Known) and isinstance(weighing, Known):
            # a stated plus-minus holds the value in about 19 of 20 cases: two standard uncertainties
            uncertainty = (weighing.plus_minus or 0.0) / 2 / weighing.value
            pairs.append(ClaimPair(product.maker, claim.value, weighing.value, uncertainty))
    return claims_record(pairs)


def weight_standing(product: Product, day: date, record: ClaimsRecord) -> Standing:
    """The weight as it counts: weighed, else reported, else predicted from the claim, else the bare claim."""
    found = weight_g(product, day)
    if isinstance(found, Known) and found.grade == "claimed":
        predicted = record.predict(product.maker, found.value)
        if isinstance(predicted, Prediction):
            return _predicted(found, predicted)
    return as_standing("weight", found, "g")


def _predicted(claim: Known, worth: Prediction) -> Standing:
    return Standing(
        "weight",
        worth.predicted,
        worth.predicted - worth.plus_minus,
        worth.predicted + worth.plus_minus,
        "g",
        "predicted",
        claim.date,
        claim.source,
        prediction_words(worth),
    )


POOLED_BECAUSE: dict[Fallback, str] = {
    "too few makers": "too few makers were weighed",
    "no maker measured twice": "no maker was weighed twice",
    "maker not in the record": "none of this maker's was weighed",
}
"""Why a prediction rests on the pooled record, in a sentence."""


def prediction_words(worth: Prediction) -> str:
    """The arithmetic of a prediction in one sentence."""
    result = (
        f"claimed {grams_text(worth.claimed)}, predicted {grams_text(worth.predicted)} "
        f"± {grams_text(worth.plus_minus)}, {stray_words(worth.stray_pct)}"
    )
    everybody = stray_words(worth.pooled_stray_pct)
    pooled = f"all {worth.pooled_n} weighed of all makers are {everybody} in the mean"
    if worth.own_stray_pct is None or worth.fallback in ("too few makers", "no maker measured twice"):
        because = f", since {POOLED_BECAUSE[worth.fallback]}" if worth.fallback else ""
        return f"{result}: {pooled}; the record of all makers counts{because}"
    share = number_text(100 * worth.own_weight)
    one = worth.maker_n == 1
    own = f"the {'one' if one else worth.maker_n} weighed of {worth.maker} {'is' if one else 'are'}"
    own += f" {stray_words(worth.own_stray_pct)}{'' if one else ' in the mean'}"
    return f"{result}: {own}, which counts {share} %; {pooled}"


def stray_words(stray_pct: float) -> str:
    """How a weighing stands to the claim: '1.4 % heavier than claimed'.

    >>> stray_words(1.42), stray_words(-0.3), stray_words(0.01)
    ('1.4 % heavier than claimed', '0.3 % lighter than claimed', 'as heavy as claimed')
    """
    size = percent_text(abs(stray_pct))
    if size == percent_text(0.0):
        return "as heavy as claimed"
    return f"{size} {'heavier' if stray_pct > 0 else 'lighter'} than claimed"
