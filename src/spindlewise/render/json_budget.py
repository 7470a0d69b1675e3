"""The uncertainty budget of a reading as JSON, cause by cause."""

from spindlewise.reception.budget import COVERAGE, Budget
from spindlewise.render.as_json import Json, number


def budget_json(budget: Budget, receiver: str) -> dict[str, Json]:
    """All that the figure is made of, in percent of the truth; null where no figure can be given."""
    return {
        "receiver": receiver,
        "expanded_pct": number(budget.expanded_pct),
        "coverage_factor": COVERAGE,
        "combined_pct": number(budget.combined_pct),
        "bias_pct": number(budget.bias_pct),
        "low_error_pct": number(budget.low_error_pct),
        "high_error_pct": number(budget.high_error_pct),
        "expanded_at_kindest_pct": number(budget.expanded_low_pct),
        "expanded_at_least_kind_pct": number(budget.expanded_high_pct),
        "largest": budget.largest or None,
        "contributions": [
            {
                "cause": cause.name,
                "bias_pct": number(cause.bias_pct),
                "standard_pct": number(cause.standard_pct),
                "kindest_standard_pct": number(cause.kindest_standard_pct),
                "kind": cause.kind,
                "note": cause.note,
            }
            for cause in budget.contributions
        ],
        "missing": list(budget.missing),
        "not_measured": list(budget.not_measured),
        "left_out": list(budget.left_out),
        "note": budget.note or None,
    }
