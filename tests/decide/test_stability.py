"""How often each product takes each place."""

import numpy as np
import pytest

from spindlewise.decide.curves import Curve
from spindlewise.decide.merit_draws import NORMAL, UNIFORM, SpreadMerits
from spindlewise.decide.score import ranking_order, score
from spindlewise.decide.stability import DRAWS_AT_ONCE, Stability, stability
from spindlewise.decide.table import MeritTable
from spindlewise.decide.weight_draws import AnyWeights, AroundShares, HeldWeights


def table_of(merits, products=None, low=None, high=None) -> MeritTable:
    expected = np.array(merits, dtype=float)
    n, m = expected.shape
    names = products or tuple(f"pedal {i:03}" for i in range(n))
    lower = expected if low is None else np.array(low, dtype=float)
    upper = expected if high is None else np.array(high, dtype=float)
    return MeritTable(tuple(names), tuple(f"c{k}" for k in range(m)), lower, expected, upper)


def uncertain_table(n=5, m=3, seed=20240101) -> MeritTable:
    low, expected, high = np.sort(np.random.default_rng(seed).random((3, n, m)), axis=0)
    return table_of(expected, low=low, high=high)


def same_bytes(one: Stability, other: Stability) -> bool:
    names = ("places", "first", "beats", "central_weights")
    return all(getattr(one, name).tobytes() == getattr(other, name).tobytes() for name in names)


def plain_twin(table, law, held, draws, seed):
    """The same draws, ranked one by one with the ranking's own functions."""
    n, m = table.expected.shape
    places, beats, central = np.zeros((n, n)), np.zeros((n, n)), np.zeros((n, m))
    sizes = [min(DRAWS_AT_ONCE, draws - start) for start in range(0, draws, DRAWS_AT_ONCE)]
    for child, size in zip(np.random.SeedSequence(seed).spawn(len(sizes)), sizes, strict=True):
        for weights in law.draw(np.random.Generator(np.random.SFC64(child)), size).T:
            order = ranking_order(table.products, score(table, weights).expected, held)
            places[order, np.arange(n)] += 1
            for upper in range(n):
                beats[order[upper], order[upper + 1 :]] += 1
            central[order[0]] += weights
    return places / draws, beats / draws, central


@pytest.mark.parametrize("held", [None, [False, True, False, False, True]])
def test_it_counts_what_ranking_every_draw_by_itself_counts(held) -> None:
    merits = np.random.default_rng(7).integers(0, 5, (5, 3)) / 4.0
    merits[3] = merits[1]
    table = table_of(merits, products=("heron", "dunlin", "egret", "avocet", "curlew"))
    law = AroundShares((0.5, 0.3, 0.2), 15.0)

    found = stability(table, law, held_back=held, draws=DRAWS_AT_ONCE + 500, seed=3)

    places, beats, central = plain_twin(table, law, held, DRAWS_AT_ONCE + 500, 3)
    assert found.places == pytest.approx(places)
    assert found.beats == pytest.approx(beats)
    ever = found.first > 0
    assert found.first == pytest.approx(places[:, 0])
    assert found.central_weights[ever] == pytest.approx(central[ever] / (places[ever, :1] * found.draws))
    assert np.isnan(found.central_weights[~ever]).all()


@pytest.mark.parametrize("n", [1, 2, 3, 256, 257, 300])
def test_hundreds_of_products_are_counted_as_a_few_are(n) -> None:
    """Rows and scores share a whole number, which must have room for as many rows as there are."""
    merits = np.random.default_rng(n).integers(0, 5, (n, 3)) / 4.0
    table = table_of(merits, products=tuple(f"pedal-{row:03}" for row in reversed(range(n))))
    held = np.arange(n) % 7 == 3
    law = AroundShares((0.5, 0.3, 0.2), 15.0)

    found = stability(table, law, held_back=held, draws=40, seed=n)

    places, beats, _ = plain_twin(table, law, held, 40, n)
    assert np.array_equal(found.places, places)
    assert np.array_equal(found.beats, beats)


@pytest.mark.parametrize("law", [AnyWeights(3), AroundShares((0.5, 0.3, 0.2), 63.0)])
def test_threads_change_no_byte(law) -> None:
    table = uncertain_table()
    merits = SpreadMerits(table, np.full((5, 3), NORMAL, dtype=np.int8))

    one, two = (stability(table, law, merits, draws=21_000, seed=5, threads=k) for k in (1, 2))

    assert same_bytes(one, two)
    assert not same_bytes(one, stability(table, law, merits, draws=21_000, seed=6))


def test_the_order_of_the_products_moves_their_rows_and_nothing_else() -> None:
    table = uncertain_table()
    turned = table.keep(tuple(reversed(table.products)))
    law = AroundShares((0.5, 0.3, 0.2), 15.0)

    one, other = (stability(each, law, draws=9_000) for each in (table, turned))

    assert np.array_equal(one.places, other.places[::-1])
    assert np.array_equal(one.beats, other.beats[::-1, ::-1])
    assert np.array_equal(one.central_weights, other.central_weights[::-1], equal_nan=True)


def test_equal_products_take_their_places_by_id() -> None:
    table = table_of([[0.3, 0.7], [0.3, 0.7], [0.3, 0.7]], products=("heron", "avocet", "dunlin"))

    found = stability(table, AnyWeights(2), draws=20_000)

    assert found.first.tolist() == [0.0, 1.0, 0.0]
    assert found.places.tolist() == [[0, 0, 1], [1, 0, 0], [0, 1, 0]]
    assert found.beats.tolist() == [[0, 0, 0], [1, 0, 1], [1, 0, 0]]


def test_scores_that_are_equal_on_paper_tie() -> None:
    """0.1 + 0.2 is not 0.3 in floats; the places must not know."""
    table = table_of([[0.3, 0.3, 0.3], [0.1, 0.2, 0.6]], products=("heron", "avocet"))

    assert stability(table, HeldWeights((1.0, 1.0, 1.0)), draws=10).first.tolist() == [0.0, 1.0]


def test_what_is_held_back_is_never_first_and_stands_after_all_others() -> None:
    table = table_of([[1.0, 1.0], [0.5, 0.0], [0.0, 0.5]])

    found = stability(table, AnyWeights(2), held_back=[True, False, False], draws=5_000)

    assert found.places[0].tolist() == [0.0, 0.0, 1.0]
    assert found.first[0] == 0.0
    assert np.isnan(found.central_weights[0]).all()
    assert found.first.sum() == pytest.approx(1.0)


def test_where_all_are_held_back_they_have_places_but_no_first() -> None:
    table = table_of([[1.0], [0.5]])

    found = stability(table, AnyWeights(1), held_back=[True, True], draws=100)

    assert found.places.tolist() == [[1.0, 0.0], [0.0, 1.0]]
    assert found.first.tolist() == [0.0, 0.0]
    assert np.isnan(found.central_weights).all()


def test_a_single_product_is_always_first() -> None:
    found = stability(table_of([[0.0, 0.0]]), AnyWeights(2), draws=100)

    assert (found.places.tolist(), found.first.tolist(), found.beats.tolist()) == ([[1.0]], [1.0], [[0.0]])


def test_a_law_of_ones_own_can_draw_figures_and_put_them_through_their_curve() -> None:
    """A figure of 600 to 1,000 over a curve with a knee at 800, against a rival that stands at 0.75."""

    class Figures:
        curve = Curve((600.0, 800.0, 1000.0), (1.0, 0.75, 0.0))

        def draw(self, generator, criterion, draws):
            return np.array([0]), self.curve.at(generator.uniform(600.0, 1000.0, (1, draws)))

    found = stability(table_of([[0.0], [0.75]]), HeldWeights((1.0,)), Figures(), draws=40_000)

    assert found.first[0] == pytest.approx(0.5, abs=4 * found.standard_error(0.5))


class Settled:
    """The merits that a later weighing found, the same in every draw; by criterion: rows and their merits."""

    def __init__(self, found) -> None:
        self.found = found

    def draw(self, generator, criterion, draws):
        if criterion not in self.found:
            return None
        rows, merits = self.found[criterion]
        return np.array(rows), np.repeat(np.array(merits)[:, None], draws, axis=1)


def test_merits_drawn_on_several_criteria_add_up() -> None:
    table = table_of([[0.0, 0.0, 0.5], [0.5, 0.5, 0.5]])
    each = HeldWeights((0.4, 0.4, 0.2))

    assert stability(table, each, draws=10).first.tolist() == [0.0, 1.0]
    both = Settled({0: ([0], [0.6]), 1: ([0], [0.6])})
    assert stability(table, each, both, draws=10).first.tolist() == [1.0, 0.0]
    all_rows = Settled({0: ([0, 1], [0.6, 0.5]), 1: ([0, 1], [0.6, 0.5])})
    assert stability(table, each, all_rows, draws=10).first.tolist() == [1.0, 0.0]


def test_a_merit_drawn_just_as_high_as_a_rivals_ties_with_it() -> None:
    table = table_of([[0.0], [0.75]], products=("heron", "avocet"))

    found = stability(table, HeldWeights((1.0,)), Settled({0: ([0], [0.75])}), draws=10)

    # avocet by its id
    assert found.first.tolist() == [0.0, 1.0]


def test_a_merit_held_by_its_law_stands_as_expected() -> None:
    table = table_of([[0.2, 0.9], [0.8, 0.5]], low=[[0.0, 0.9], [0.8, 0.5]], high=[[1.0, 0.9], [0.8, 0.5]])
    kinds = np.array([[UNIFORM, NORMAL], [NORMAL, NORMAL]])

    found = stability(table, HeldWeights((1.0, 1.0)), SpreadMerits(table, kinds), draws=40_000)

    # first where u + 0.9 > 1.3
    assert found.first[0] == pytest.approx(0.6, abs=4 * found.standard_error(0.6))


@pytest.mark.parametrize("n", [256, 257, 300])
def test_more_products_than_a_byte_can_count(n) -> None:
    merits = np.arange(n)[:, None] / n

    found = stability(table_of(merits), AnyWeights(1), draws=10)

    assert np.array_equal(found.places, np.eye(n)[::-1])
    assert np.array_equal(found.beats, np.tril(np.ones((n, n)), -1))


def test_standard_errors() -> None:
    found = stability(table_of([[1.0], [0.0]]), AnyWeights(1), draws=400)

    assert found.standard_error([0.5, 0.2, 0.0]).tolist() == pytest.approx([0.025, 0.02, 0.0])
    assert (found.draws, found.seed, found.products) == (400, 1, ("pedal 000", "pedal 001"))


def test_one_draw_will_do_and_a_hundred_thousand_are_usual() -> None:
    table = table_of([[1.0], [0.0]])

    assert stability(table, AnyWeights(1), draws=1).first.tolist() == [1.0, 0.0]
    assert stability(table, HeldWeights((1.0,))).draws == 100_000


def test_a_law_for_other_criteria_or_no_products_is_refused() -> None:
    with pytest.raises(
        ValueError,
        match=r"^a table of 1 products on 2 criteria and weights over 3 criteria; at least one product",
    ):
        stability(table_of([[0.5, 0.5]]), AnyWeights(3))
    with pytest.raises(ValueError, match=r"at least one product and as many weights as criteria are needed$"):
        stability(table_of(np.empty((0, 2))), AnyWeights(2))


@pytest.mark.parametrize("counts", [{"draws": 0}, {"threads": 0}])
def test_fewer_draws_or_threads_than_one_are_refused(counts) -> None:
    with pytest.raises(ValueError, match=r"asked for; at least 1 of each is needed$"):
        stability(table_of([[0.5]]), AnyWeights(1), **counts)
