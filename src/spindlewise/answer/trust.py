"""How far a reading may be trusted on the buyer's receiver, with the buyer's own balance."""

from dataclasses import replace
from datetime import date

from spindlewise.answer.standing import Origin, Standing
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.figure import Known, figure
from spindlewise.catalog.product import Product
from spindlewise.reception.budget import Budget
from spindlewise.reception.crank_setting import CrankSettingError
from spindlewise.reception.doubled_side import DoubledError, SensorSide, doubled_error
from spindlewise.reception.reading_mode import Reception
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty
from spindlewise.reception.unmeasured import Unmeasured


def reading_budget(
    product: Product,
    reception: Reception,
    buyer: Buyer,
    day: date,
    unmeasured: Unmeasured,
    crank: CrankSettingError | None = None,
) -> Budget:
    """The uncertainty budget of the product's reading on this receiver, for this buyer.

    The crank length is taken as rightly set, since whoever rides can set it for nothing: a wrong setting must
    not choose the pedals, least of all by taking a meter's own bias away. `crank` is for a what-if only.
    """
    tolerance = figure(product, "tolerance_pct", day)
    temperature = figure(product, "temperature_pct", day)
    return reading_uncertainty(
        reception.mode,
        tolerance_pct=tolerance.value if isinstance(tolerance, Known) else None,
        bench=bench_evidence(product, day),
        doubled=side_error(product, reception, buyer),
        temperature_pct=temperature.value if isinstance(temperature, Known) else None,
        crank=crank,
        unmeasured=unmeasured,
    )


def bench_evidence(product: Product, day: date) -> BenchEvidence | None:
    """Bias and spread as the bench saw them; nothing unless both are there."""
    bias = figure(product, "reading_bias_pct", day)
    spread = figure(product, "reading_spread_pct", day)
    if not isinstance(bias, Known) or not isinstance(spread, Known):
        return None
    return BenchEvidence(bias.value, spread.value, bias.plus_minus or 0.0)


def side_error(product: Product, reception: Reception, buyer: Buyer) -> DoubledError | None:
    """The error of a doubled side at this buyer's balance, or a population's where it is unknown."""
    if reception.mode != "one side doubled":
        return None
    side: SensorSide = "right" if product.sides == "right" else "left"
    balance = buyer.riding.balance_left_pct
    shares = None if isinstance(balance, str) else (balance.low / 100, balance.high / 100)
    threshold = buyer.riding.threshold_power_w
    return doubled_error(shares, side, None if isinstance(threshold, str) else threshold)


def uncertainty_standing(product: Product, budget: Budget) -> Standing:
    """The expanded uncertainty (k = 2) as a standing.

    Its interval is the range of the buyer's balance, and of what is plausible of what nobody has measured.
    """
    name, unit = "reading_uncertainty", "%"
    if product.kind == "plain pedal":
        return Standing(name, None, None, None, unit, "not applicable", None, "measures nothing")
    if budget.expanded_pct is None:
        because = f"unknown: {', '.join(budget.missing)}" if budget.missing else budget.note
        origin: Origin = "unknown" if budget.missing else "none"
        return Standing(name, None, None, None, unit, origin, None, because)
    names = [cause.name for cause in budget.contributions]
    note = f"largest: {budget.largest}"
    if budget.not_measured:
        note += f"; not measured: {', '.join(budget.not_measured)}"
    return Standing(
        name,
        budget.expanded_pct,
        budget.expanded_low_pct,
        budget.expanded_high_pct,
        unit,
        "worked out" if "bench bias" in names else "worked out from claims",
        None,
        ", ".join(names),
        note,
        not_measured=budget.not_measured,
    )


def known_uncertainty(whole: Standing, budget: Budget, buyer: Buyer) -> Standing:
    """The same with the interval of what is known alone: the range of the buyer's own balance, if stated.

    Causes that nobody has measured, and a balance that the buyer does not know, stand as they are expected.
    A figure that is unknown altogether stays so. `whole` is the standing with the whole interval.
    """
    if whole.value is None:
        return whole
    if isinstance(buyer.riding.balance_left_pct, str) and has_doubled_side(budget):
        return replace(whole, low=None, high=None)
    return replace(whole, low=budget.known_low_pct)


def has_doubled_side(budget: Budget) -> bool:
    """Whether one side's doubling is among the causes."""
    return any(cause.name == "doubled side" for cause in budget.contributions)
