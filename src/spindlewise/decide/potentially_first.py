"""Whether any weights at all would put a product first."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.decide.score import held_flags
from spindlewise.decide.table import FloatArray, MeritTable

LEAST_MARGIN = -1e-6
"""Points by which a product may fall short of level, the linear programme being solved in floats."""


@dataclass(frozen=True, slots=True, eq=False)
class PotentialFirst:
    """The best case for one product: the weights that serve it most, and its lead over the best other then.

    `margin` is in points: above 0 it would be first, at 0 level with another, below 0 no weights put it
    first. `shares` has shape (m,). Both are None for a product held back while another is not, and `margin`
    is None for a product without rivals.
    """

    product: str
    can_be_first: bool
    margin: float | None
    shares: FloatArray | None


def potentially_first(
    table: MeritTable, product: int, held_back: npt.ArrayLike | None = None
) -> PotentialFirst:
    """Give the weights under which row `product` leads by most, and that lead, on expected merits.

    Solves the linear programme: the greatest t with sum_k w_k * (merit_product,k - merit_other,k) >= t for
    every other product not held back, w >= 0, sum(w) = 1 (potential optimality, Hazen 1986; Athanassopoulos
    and Podinovski 1997). The margin reported is worked out anew from the weights found. RuntimeError if the
    solver fails, which a programme that is always feasible and bounded gives it no reason to do.
    """
    n, m = table.expected.shape
    held = held_flags(held_back, n)
    name = table.products[product]
    if held[product] and not held.all():
        return PotentialFirst(name, False, None, None)
    others = (held == held[product]) & (np.arange(n) != product)
    if not others.any():
        return PotentialFirst(name, True, None, np.full(m, 1.0 / m))
    leads = table.expected[product] - table.expected[others]
    shares = _best_shares(leads)
    margin = 100.0 * float(np.min(leads @ shares))
    return PotentialFirst(name, margin >= LEAST_MARGIN, margin, shares)


def _best_shares(leads: FloatArray) -> FloatArray:
    from scipy.optimize import linprog

    m = leads.shape[1]
    margin_only = np.append(np.zeros(m), -1.0)
    found = linprog(
        margin_only,
        A_ub=np.column_stack((-leads, np.ones(len(leads)))),
        b_ub=np.zeros(len(leads)),
        A_eq=np.append(np.ones(m), 0.0)[None, :],
        b_eq=[1.0],
        bounds=[(0.0, None)] * m + [(None, None)],
        method="highs",
    )
    if found.x is None:
        raise RuntimeError(f"the search for the most favourable weights failed: {found.message}")
    shares = np.maximum(found.x[:m], 0.0)
    return np.asarray(shares / shares.sum(), dtype=np.float64)
