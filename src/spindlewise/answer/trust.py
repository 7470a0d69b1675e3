"""How far a reading may be trusted on the buyer's receiver, with the buyer's own balance."""

from datetime import date

from spindlewise.answer.standing import Origin, Standing
from spindlewise.buyer.buyer import Bike, Buyer
from spindlewise.catalog.figure import Known, figure
from spindlewise.catalog.product import Product
from spindlewise.reception.budget import Budget
from spindlewise.reception.crank_setting import CrankSettingError, crank_setting_error
from spindlewise.reception.doubled_side import DoubledError, SensorSide, doubled_error
from spindlewise.reception.reading_mode import Reception
from spindlewise.reception.uncertainty import BenchEvidence, reading_uncertainty


def reading_budget(product: Product, reception: Reception, buyer: Buyer, day: date) -> Budget:
    """The uncertainty budget of the product's reading on this receiver, for this buyer."""
    tolerance = figure(product, "tolerance_pct", day)
    temperature = figure(product, "temperature_pct", day)
    return reading_uncertainty(
        reception.mode,
        tolerance_pct=tolerance.value if isinstance(tolerance, Known) else None,
        bench=bench_evidence(product, day),
        doubled=side_error(product, reception, buyer),
        temperature_pct=temperature.value if isinstance(temperature, Known) else None,
        crank=crank_error(buyer),
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


def crank_error(buyer: Buyer) -> CrankSettingError | None:
    """What a crank length set otherwise than ridden does to the reading; nothing where it is not stated."""
    ridden, set_to = ridden_crank_mm(buyer.bike), buyer.bike.head_unit_crank_mm
    if ridden is None or isinstance(set_to, str):
        return None
    threshold = buyer.riding.threshold_power_w
    return crank_setting_error(set_to, ridden, None if isinstance(threshold, str) else threshold)


def ridden_crank_mm(bike: Bike) -> float | None:
    """The crank length after the swap."""
    length = bike.crank_mm if isinstance(bike.new_crank_mm, str) else bike.new_crank_mm
    return None if isinstance(length, str) else length


def uncertainty_standing(product: Product, budget: Budget) -> Standing:
    """The expanded uncertainty (k = 2) as a standing; its interval is the range of the buyer's balance."""
    name, unit = "reading_uncertainty", "%"
    if product.kind == "plain pedal":
        return Standing(name, None, None, None, unit, "not applicable", None, "measures nothing")
    if budget.expanded_pct is None:
        because = f"unknown: {', '.join(budget.missing)}" if budget.missing else budget.note
        origin: Origin = "unknown" if budget.missing else "none"
        return Standing(name, None, None, None, unit, origin, None, because)
    source = ", ".join(c.name for c in budget.contributions)
    note = f"largest: {budget.largest}"
    return Standing(
        name,
        budget.expanded_pct,
        budget.expanded_low_pct,
        budget.expanded_high_pct,
        unit,
        "worked out",
        None,
        source,
        note,
    )
