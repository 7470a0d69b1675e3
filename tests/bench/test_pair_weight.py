"""A pair from its sides, and with and without its cells."""

import math

import pytest

from spindlewise.bench.pair_weight import pair_from_sides, same_with_cells
from spindlewise.bench.weighing import Scale, Weighing, WeightBasis, weigh

CERTIFIED = Scale("lab scale", 0.1, calibration_g=0.6)
OTHER = Scale("counter scale", 0.1, calibration_g=0.8)
BARE = Scale("kitchen scale", 1.0)


def side(grams: float, scale: Scale = CERTIFIED, **options: object) -> Weighing:
    basis = WeightBasis("one pedal", "in", "off")
    return weigh([grams, grams + 0.2], scale=scale, basis=basis, **options)  # type: ignore[arg-type]


def pair(grams: float, batteries: str, cleats: str = "off", count: str = "pair") -> Weighing:
    return weigh([grams] * 3, scale=BARE, basis=WeightBasis(count, batteries, cleats))


def test_one_scales_calibration_adds_plainly() -> None:
    found = pair_from_sides(side(185.0), side(186.0))
    assert found.mean_g == pytest.approx(371.2)
    assert found.basis == WeightBasis("pair", "in", "off")
    assert found.scale == "lab scale"
    assert found.type_a_g == pytest.approx(math.hypot(0.1, 0.1))
    assert found.type_b_g == pytest.approx(math.sqrt(0.6**2 + 2 * 0.01 / 12))
    assert [part.cause for part in found.components if part.type == "A"] == [
        "left, readings: repeats",
        "right, readings: repeats",
    ]


def test_two_scales_calibrations_add_as_squares() -> None:
    found = pair_from_sides(side(185.0), side(186.0, OTHER))
    assert found.type_b_g == pytest.approx(math.sqrt(0.3**2 + 0.4**2 + 2 * 0.01 / 12))
    assert found.scale == "lab scale, counter scale"


def test_what_was_left_out_of_either_side_is_told_once() -> None:
    one = weigh([185.0], scale=BARE, basis=WeightBasis("one pedal", "in", "off"))
    assert pair_from_sides(one, side(186.0, BARE)).left_out == ("left, readings: repeats", "calibration")


@pytest.mark.parametrize(
    ("left", "right", "says"),
    [
        (side(185.0), pair(186.0, "in"), "each side is 'one pedal'"),
        (side(185.0), pair(186.0, "out", count="one pedal"), "they must be the same"),
        (side(185.0), side(186.0, coverage="t"), "they must be the same"),
    ],
)
def test_sides_that_do_not_match_are_refused(left: Weighing, right: Weighing, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        pair_from_sides(left, right)


def test_the_same_pair_with_and_without_its_cells_is_one_thing() -> None:
    """Two alkaline AAA cells weigh about 23 g (common practice, no source)."""
    found = same_with_cells(
        pair(371.0, "in"), pair(348.0, "out"), cells=2, cell_g=11.5, cell_plus_minus_g=0.5
    )
    assert found.one_thing
    assert (found.seen_g, found.expected_g) == (23.0, 23.0)
    assert found.plus_minus_g == pytest.approx(math.sqrt(2 * 4 / 12 + 1.0))


@pytest.mark.parametrize(
    ("bare_g", "one_thing"), [(349.2, True), (346.8, True), (350.0, False), (340.0, False)]
)
def test_what_the_cells_do_not_explain_is_another_thing(bare_g: float, one_thing: bool) -> None:
    found = same_with_cells(
        pair(371.0, "in"), pair(bare_g, "out"), cells=2, cell_g=11.5, cell_plus_minus_g=0.5
    )
    assert found.one_thing is one_thing


@pytest.mark.parametrize(
    ("full", "bare"),
    [
        (pair(371.0, "out"), pair(348.0, "in")),
        (pair(371.0, "in"), pair(348.0, "unknown")),
        (pair(371.0, "in"), pair(348.0, "out", "on")),
        (pair(371.0, "in"), pair(174.0, "out", count="one pedal")),
    ],
)
def test_unlike_weighings_are_refused(full: Weighing, bare: Weighing) -> None:
    with pytest.raises(ValueError, match="all else is the same"):
        same_with_cells(full, bare, cells=2, cell_g=11.5, cell_plus_minus_g=0.5)


@pytest.mark.parametrize(("cells", "grams", "plus_minus"), [(0, 11.5, 0.5), (2, 0.0, 0.5), (2, 11.5, -0.1)])
def test_cells_that_are_none_are_refused(cells: int, grams: float, plus_minus: float) -> None:
    with pytest.raises(ValueError, match="at least one, above 0 g"):
        same_with_cells(
            pair(371.0, "in"), pair(348.0, "out"), cells=cells, cell_g=grams, cell_plus_minus_g=plus_minus
        )


def test_one_cell_whose_weight_is_known_for_sure() -> None:
    found = same_with_cells(
        pair(371.0, "in"), pair(359.5, "out"), cells=1, cell_g=11.5, cell_plus_minus_g=0.0
    )
    assert found.one_thing
    assert found.expected_g == 11.5
