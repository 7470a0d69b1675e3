"""Hamley and Thomas, 1967: saddle top to pedal at 109 % of inseam; and 0.883 of inseam, common in the trade.

Both as cited by Peveler et al., 2005, JEPonline 8(1):51-55 (abstract seen). Plausibility marks for the
leg model only: nothing in the project takes either for a right saddle height.
"""

from __future__ import annotations

import pytest

from spindlewise.fit.leg import Contact, Rider, knee_flexion_deg, longest_reach_mm
from spindlewise.fit.proportions import segments

INSEAM_OF_HEIGHT = 0.47  # from memory: about what riders of average build have


@pytest.mark.parametrize("body_height_mm", [1600.0, 1700.0, 1750.0, 1800.0, 1900.0])
@pytest.mark.parametrize("rule", ["1.09 to the pedal", "0.883 to the axle"])
def test_the_knee_is_bent_plausibly_at_the_heights_the_trade_uses(body_height_mm: float, rule: str) -> None:
    """Holmes et al., 1994, and Peveler, 2005, speak of 25 to 35 degrees; the model may be off by ten."""
    inseam, crank = INSEAM_OF_HEIGHT * body_height_mm, 0.0975 * body_height_mm
    height = 0.883 * inseam if rule.startswith("0.883") else 1.09 * inseam - crank
    lengths = segments(body_height_mm)
    rider = Rider(lengths.thigh_mm, lengths.shank_mm, lengths.ankle_height_mm, height, 73.0, 10.0, 15.0)
    reach = longest_reach_mm(rider, Contact(20.0, crank, 0.5 * lengths.foot_length_mm))
    assert 15 < knee_flexion_deg(rider, reach) < 45


@pytest.mark.parametrize(
    ("inseam_mm", "to_pedal_mm", "to_axle_mm", "agree_at_mm"),
    [(700, 763.0, 618.10, 144.90), (800, 872.0, 706.40, 165.60), (900, 981.0, 794.70, 186.30)],
)
def test_both_rules_agree_only_at_one_crank_length(
    inseam_mm: int, to_pedal_mm: float, to_axle_mm: float, agree_at_mm: float
) -> None:
    assert 1.09 * inseam_mm == pytest.approx(to_pedal_mm)
    assert 0.883 * inseam_mm == pytest.approx(to_axle_mm)
    assert to_pedal_mm - to_axle_mm == pytest.approx(agree_at_mm)
