import numpy as np
import pytest

from spindlewise.bench.alignment import align
from spindlewise.bench.gaps import find_dropouts
from spindlewise.bench.synthetic_ride import Dropout, Meter, Stretch, record, ride

nan = float("nan")


def told(power, *others, others_written=None, **options):
    power, others = np.array(power, dtype=float), np.array(others, dtype=float)
    written = np.isfinite(power)
    others_written = np.isfinite(others) if others_written is None else np.array(others_written, dtype=bool)
    return find_dropouts(
        "a", np.arange(len(power)) + 100.0, power, others, written, others_written, **options
    )


def kinds(dropouts):
    return [(s.start_s, s.length_s, s.kind) for s in dropouts.silences]


RIDE = [200.0] * 20


def with_run(begin, end, value=0.0):
    return [value if begin <= i < end else 200.0 for i in range(20)]


def test_zero_while_another_pedals_is_a_dropout():
    found = told(with_run(8, 13), RIDE)
    assert kinds(found) == [(108, 5, "dropout")]
    assert (found.dropout_s, found.ridden_s, found.lost_pct, found.verdict) == (5, 20, 25, "dropouts")
    assert found.silences[0].zeros_s == 5


def test_zero_while_another_stands_still_is_coasting():
    found = told(with_run(8, 13), with_run(8, 13))
    assert kinds(found) == [(108, 5, "coasting")]
    assert (found.dropout_s, found.verdict, found.lost_pct) == (0, "none", 0)


def test_coasting_may_be_off_by_the_edges():
    assert kinds(told(with_run(8, 13), with_run(9, 14))) == [(108, 5, "coasting")]
    assert kinds(told(with_run(8, 14), with_run(10, 12), edge_s=2)) == [(108, 6, "coasting")]


def test_missing_rows_while_another_pedals_are_a_dropout():
    found = told(with_run(8, 12, nan), RIDE)
    assert kinds(found) == [(108, 4, "dropout")]
    assert found.silences[0].zeros_s == 0


def test_a_short_zero_beside_anothers_coasting_cannot_be_told():
    found = told(with_run(8, 12), with_run(12, 15))
    assert kinds(found) == [(108, 4, "cannot tell")]
    assert found.silences[0].because == "another one's coasting is too near"
    assert (found.untold_s, found.verdict) == (4, "cannot tell")


def test_two_others_that_contradict_each_other_tell_nothing():
    found = told(with_run(8, 13), RIDE, with_run(8, 13))
    assert found.silences[0].because == "the others contradict each other"


def test_nobody_else_there_tells_nothing():
    found = told(with_run(8, 13), with_run(5, 16, nan), others_written=[[True] * 20])
    assert found.silences[0].because == "no other recording has a value there"
    assert told(with_run(8, 13), with_run(5, 16, nan), RIDE).silences[0].kind == "dropout"


def test_a_pause_is_a_pause():
    everybody = told(with_run(8, 13, nan), with_run(8, 13, nan))
    assert kinds(everybody) == [(108, 5, "pause")]
    assert everybody.verdict == "none"
    alone = told(with_run(5, 16, nan), RIDE)
    assert kinds(alone) == [(105, 11, "pause")]
    assert alone.silences[0].because == "this recorder alone wrote nothing"


def test_before_the_first_row_and_after_the_last_nothing_is_missing():
    found = told([nan] * 5 + [200] * 10 + [nan] * 5, RIDE)
    assert found.silences == ()
    assert found.ridden_s == 10
    assert told([nan] * 20, RIDE).silences == ()
    assert told([nan] * 20, RIDE).lost_pct == 0


def test_a_row_every_few_seconds_has_no_dropouts_between():
    slow = [200.0 if i % 5 == 0 else nan for i in range(20)]
    assert told(slow, RIDE, interval_s=5.0).silences == ()
    assert told([200, nan, nan, nan, nan, nan, nan, nan, nan, 200] * 2, RIDE, interval_s=5.0).dropout_s == 16


def test_one_silent_second_is_the_rounding_of_clocks():
    assert told(with_run(8, 9), RIDE).silences == ()


def test_a_silence_at_the_very_beginning_of_the_ride_is_told_too():
    assert kinds(told(with_run(0, 4), RIDE)) == [(100, 4, "dropout")]


def test_rows_of_unlike_length_are_refused():
    with pytest.raises(ValueError, match="the same number of seconds"):
        find_dropouts(
            "a", np.arange(3.0), np.ones(4), np.ones((1, 3)), np.ones(3, bool), np.ones((1, 3), bool)
        )


def dropouts_of(plan, *dropouts, late_s=3.4, variability=0.06, within_s=120.0):
    truth = ride(plan, 5, variability=variability)
    a = record(truth, Meter("a", noise_w=4, late_s=late_s, dropouts=dropouts), 5)
    b = record(truth, Meter("b", noise_w=4, loss_pct=2), 5)
    aligned = align([a, b], "b", within_s)
    return find_dropouts(
        "a", aligned.seconds, aligned.power_w[0], aligned.power_w[1:], aligned.written[0],
        aligned.written[1:], edge_s=max(aligned.edge_s),
    )  # fmt: skip


def test_the_dropouts_of_a_ride_with_a_late_clock_are_recovered():
    plan = [Stretch(200, 200), Stretch(40, 0, 0), Stretch(300, 250), Stretch(15, 0, 0), Stretch(200, 180)]
    found = dropouts_of(plan, Dropout(100, 6), Dropout(400, 12), Dropout(650, 3, "missing"))
    assert found.verdict == "dropouts"
    assert found.dropout_s == pytest.approx(6 + 12 + 3, abs=1)
    assert [round(s.start_s) + 3 for s in found.of_kind("dropout")] == pytest.approx([100, 400, 650], abs=4)
    assert [s.length_s for s in found.of_kind("coasting")] == pytest.approx([40, 15], abs=2)


def test_where_all_is_stop_and_start_nothing_can_be_told():
    plan = [Stretch(5, 220), Stretch(4, 0, 0)] * 60
    found = dropouts_of(plan, late_s=4.5, variability=0.0, within_s=30.0)
    assert found.verdict == "cannot tell"
    assert (found.dropout_s, found.of_kind("coasting")) == (0, ())
