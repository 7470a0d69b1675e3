"""The bench's weighings as JSON."""

from datetime import date

from spindlewise.answer.bench_claim import Held, basis_of
from spindlewise.answer.bench_weigh import OneThing, Weighed, WeighReport
from spindlewise.render.as_json import Json, number

SCHEMA = "spindlewise bench weigh 1"


def weigh_json(report: WeighReport, day: date) -> dict[str, Json]:
    """The whole report without its schema key; grams, not rounded to what they carry."""
    return {
        "as_of": day.isoformat(),
        "weighed": [_weighed(one) for one in report.weighed],
        "with_and_without_cells": [_cells(pair) for pair in report.cells],
        "problems": len(report.problems),
    }


def _weighed(one: Weighed) -> dict[str, Json]:
    weighing = one.weighing
    parts: list[Json] = [
        {
            "cause": part.cause,
            "type": part.type,
            "standard_g": number(part.standard_g),
        }
        for part in weighing.components
    ]
    return {
        "product": one.product,
        "date": one.date.isoformat(),
        "what": one.what,
        "basis": dict(basis_of(weighing)),
        "left_plus_right": one.sides,
        "scale": weighing.scale,
        "readings": weighing.count,
        "mean_g": number(weighing.mean_g),
        "type_a_g": number(weighing.type_a_g),
        "type_b_g": number(weighing.type_b_g),
        "components": parts,
        "coverage_factor": number(weighing.coverage_factor),
        "expanded_g": number(weighing.expanded_g),
        "not_in_the_uncertainty": list(weighing.left_out),
        "claim": None if one.held is None else _held(one.held),
    }


def _held(held: Held) -> dict[str, Json]:
    return {
        "claimed_g": number(held.claimed_g),
        "tolerance_g": number(held.tolerance_g),
        "date": held.date.isoformat(),
        "source": held.source,
        "basis": held.basis,
        "verdict": held.verdict.verdict,
        "difference_g": number(held.verdict.difference),
        "difference_pct": number(held.verdict.difference_pct),
        "unlike": list(held.verdict.unlike),
    }


def _cells(pair: OneThing) -> dict[str, Json]:
    check = pair.check
    return {
        "product": pair.with_cells.product,
        "with_cells": pair.with_cells.date.isoformat(),
        "without_cells": pair.without_cells.date.isoformat(),
        "one_thing": None if check is None else check.one_thing,
        "seen_g": None if check is None else number(check.seen_g),
        "expected_g": None if check is None else number(check.expected_g),
        "plus_minus_g": None if check is None else number(check.plus_minus_g),
        "because": pair.because,
    }
