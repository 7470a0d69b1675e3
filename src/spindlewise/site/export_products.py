"""The products of an export: facts and figures as they stand on the day, whoever asks."""

from datetime import date

from spindlewise.answer.claims import weight_standing
from spindlewise.answer.desk import Desk
from spindlewise.answer.figures import unpriced_standings
from spindlewise.answer.standing import Standing
from spindlewise.answer.trust import bench_evidence
from spindlewise.catalog.as_of import standing_notices, state
from spindlewise.catalog.figure import Absent, Known, KnownCode, figure, ingress, pedal_offset_mm, stack_mm
from spindlewise.catalog.figure import weight_g as weight_in_force
from spindlewise.catalog.product import Product
from spindlewise.reception.budget import Budget
from spindlewise.reception.uncertainty import reading_uncertainty
from spindlewise.reception.unmeasured import Unmeasured
from spindlewise.render.as_json import Json
from spindlewise.render.words_reply import disclosure_words, notice_words
from spindlewise.site.shown import shown


def exported_product(desk: Desk, product: Product, reception_row: int) -> dict[str, Json]:
    """One product; `reception_row` is its row in the reception tables."""
    day = desk.day
    name = f"{product.maker} {product.name}"
    standings = {"weight": weight_standing(product, day, desk.record), **unpriced_standings(product, day)}
    return {
        "id": product.id,
        "name": name,
        "short": product.name,
        "maker": product.maker,
        "kind": product.kind,
        "sides": product.sides,
        "state": state(product, day),
        "notices": [notice_words(name, notice) for notice in standing_notices(product, day)],
        "disclosure": disclosure_words(name, product.disclosure),
        "figures": {key: _figure(desk, standing) for key, standing in standings.items()},
        "needs": _needs(product, day),
        "reception": reception_row,
        "reading": _reading(product, day, desk.yardstick.unmeasured),
        "swap": _swap(product, day),
    }


def _figure(desk: Desk, standing: Standing) -> dict[str, Json]:
    cell = shown(standing)
    return {
        "text": cell.text,
        "spread": cell.spread,
        "origin": standing.origin,
        "source": cell.source,
        "value": standing.value,
        "low": standing.low,
        "high": standing.high,
        "merits": list(desk.yardstick.merits(standing)),
    }


def _needs(product: Product, day: date) -> dict[str, Json]:
    """The figures that needs are held against: as observed, not as predicted."""
    code = ingress(product, day)
    return {
        "rider_limit": _known(figure(product, "rider_limit_kg", day)),
        "weight": _known(weight_in_force(product, day)),
        "running_time": _known(figure(product, "running_hours", day)),
        "warranty": _known(figure(product, "warranty_years", day)),
        "bolts": product.cleat.bolts,
        "pattern": product.cleat.pattern,
        "ingress": {"code": code.value} if isinstance(code, KnownCode) else _absent(code),
    }


def _known(found: Known | Absent) -> dict[str, Json]:
    if isinstance(found, Absent):
        return _absent(found)
    return {"value": found.value, "low": found.low, "high": found.high, "grade": found.grade}


def _absent(found: Absent) -> dict[str, Json]:
    return {"absent": found.kind, "because": found.because}


def _reading(product: Product, day: date, unmeasured: Unmeasured) -> dict[str, Json]:
    """What the product alone adds to the uncertainty of its reading, cause by cause, and what is missing."""
    budget = own_budget(product, day, unmeasured)
    causes: dict[bool, list[Json]] = {True: [], False: []}
    for cause in budget.contributions:
        causes[cause.name == "temperature"].append(
            [cause.name, cause.standard_pct, cause.bias_pct, cause.kindest_standard_pct]
        )
    return {"causes": causes[False], "temperature": causes[True], "missing": list(budget.missing)}


def own_budget(product: Product, day: date, unmeasured: Unmeasured) -> Budget:
    """The budget of the reading with both sides shown, before anything of the buyer's is added."""
    tolerance, temperature = (figure(product, name, day) for name in ("tolerance_pct", "temperature_pct"))
    return reading_uncertainty(
        "both sides",
        tolerance_pct=tolerance.value if isinstance(tolerance, Known) else None,
        bench=bench_evidence(product, day),
        temperature_pct=temperature.value if isinstance(temperature, Known) else None,
        unmeasured=unmeasured,
    )


def _swap(product: Product, day: date) -> dict[str, Json]:
    cleat = product.cleat
    spread = cleat.plus_minus_mm
    return {
        "top": _pair(stack_mm(product, day, "axis to pedal top")),
        "sole": _pair(stack_mm(product, day, "axis to sole")),
        "offset": _pair(pedal_offset_mm(product, day)),
        "bolts": cleat.bolts,
        "pattern": cleat.pattern,
        "cleat": cleat.height_mm,
        "cleat_plus_minus": 0.0 if isinstance(spread, str) else spread,
    }


def _pair(found: Known | Absent) -> list[Json] | None:
    return [found.value, found.plus_minus or 0.0] if isinstance(found, Known) else None
