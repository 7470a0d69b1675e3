"""Weighings by product, day and basis; what the demo's catalog states is what its bench file gives."""

from datetime import date
from pathlib import Path
from typing import Any

import pytest

import worlds
from spindlewise.answer.bench_claim import basis_of
from spindlewise.answer.bench_weigh import WeighReport, weigh_report, weight_observation
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.weighing_row import HEADER, OPTIONAL, WeighingRow, read_weighings
from spindlewise.problems import render

DEMO = Path(__file__).parents[2] / "catalog"
BATTERY = {"type": "AAA", "count": 2, "cell_weight_g": 11.5, "spare_prices": "unknown"}


def rows(folder: Path, *lines: str) -> list[WeighingRow]:
    """Lines as `what,batteries,cleats,reading_g[,tare_g,correction_g,calibration_g]`, one day, one scale."""
    path = folder / "w.csv"
    whole = [",".join((*HEADER, *OPTIONAL))]
    for line in lines:
        cells = [*line.split(","), "", "", ""][:7]
        whole.append(",".join(["2026-03-12,some-pedal", *cells[:4], "scale A,1", *cells[4:]]))
    path.write_text("\n".join(whole), "utf-8")
    found, problems = read_weighings(path, "w.csv")
    assert problems == []
    return found


def report(folder: Path, *lines: str, **product: Any) -> WeighReport:
    catalog = worlds.catalog([worlds.product("some-pedal", **product)], [])
    return weigh_report(rows(folder, *lines), catalog, worlds.DAY)


def test_every_weight_that_the_demo_states_is_what_its_readings_give() -> None:
    catalog, _ = open_catalog(DEMO)
    assert catalog is not None
    read, problems = read_weighings(DEMO / "bench" / "weighings.csv", "bench/weighings.csv")
    found = weigh_report(read, catalog, date(2026, 11, 20), problems)
    assert found.problems == ()
    given = {
        (o.product, o.date, tuple(o.basis.values()), o.value, o.plus_minus, o.source)
        for one in found.weighed
        if (o := weight_observation(one, "bench/weighings.csv"))
    }
    stated = {
        (
            product.id,
            o.date,
            (o.basis.count, o.basis.batteries, o.basis.cleats),
            o.value,
            o.plus_minus,
            o.source,
        )
        for product in catalog.products.values()
        if not isinstance(product.observations.weight_g, str)
        for o in product.observations.weight_g
        if o.grade == "measured"
    }
    assert len(stated) == 23
    assert stated == given
    assert [pair.check and pair.check.one_thing for pair in found.cells] == [True, True]


def test_readings_of_one_thing_are_one_weighing(tmp_path: Path) -> None:
    found = report(tmp_path, "pair,in,off,404", "pair,in,on,521", "pair,in,off,403", "pair,in,off,405")
    assert [(one.weighing.count, one.weighing.mean_g) for one in found.weighed] == [(3, 404.0), (1, 521.0)]


def test_a_tare_comes_off_every_reading_of_its_group(tmp_path: Path) -> None:
    found = report(tmp_path, "pair,in,off,424,20", "pair,in,off,424,", "pair,in,off,424,20")
    assert found.weighed[0].weighing.mean_g == 404.0
    causes = [part.cause for part in found.weighed[0].weighing.components]
    assert "tare: step" in causes


def test_a_certificate_corrects_and_widens(tmp_path: Path) -> None:
    plain = report(tmp_path, "pair,in,off,404", "pair,in,off,404").weighed[0].weighing
    certified = report(tmp_path, "pair,in,off,404,,-0.5,2", "pair,in,off,404,,-0.5,2").weighed[0].weighing
    assert certified.mean_g == 403.5
    assert certified.expanded_g > plain.expanded_g
    assert "calibration" in plain.left_out
    assert "calibration" not in certified.left_out


def test_a_certificate_that_changes_within_a_group_is_a_problem(tmp_path: Path) -> None:
    found = report(tmp_path, "pair,in,off,404,,,2", "pair,in,off,404,,,3", "pair,out,off,381")
    assert len(found.weighed) == 1
    assert render(found.problems, "plain") == (
        "w.csv:3:35: error: calibration_g: not the same as in line 2, on the same scale and day; write what "
        "the scale's certificate says in each line, or give the scale another name (scale-changes)\n"
    )


def test_a_tare_as_heavy_as_the_reading_is_a_problem(tmp_path: Path) -> None:
    found = report(tmp_path, "pair,in,off,20,20")
    assert found.weighed == ()
    assert [problem.rule for problem in found.problems] == ["tare-too-heavy"]


def test_left_and_right_give_the_pair_and_no_observation_of_their_own(tmp_path: Path) -> None:
    found = report(tmp_path, "left,in,off,202", "left,in,off,202", "right,in,off,203", "right,in,off,203")
    pair, left, right = found.weighed
    assert [one.what for one in (left, pair, right)] == ["left", "pair", "right"]
    assert (pair.sides, pair.weighing.mean_g, pair.weighing.basis.count) == (True, 405.0, "pair")
    assert weight_observation(left, "w.csv") is None
    stated = weight_observation(pair, "w.csv")
    assert stated is not None
    assert stated.note.startswith("sum of left and right; 2 readings a side on scale A; SHA-256")
    assert stated.basis["count"] == "pair"


def test_one_reading_is_shown_but_is_no_observation(tmp_path: Path) -> None:
    (one,) = report(tmp_path, "pair,in,off,404").weighed
    assert weight_observation(one, "w.csv") is None


def test_the_digest_stays_while_the_file_grows(tmp_path: Path) -> None:
    lines = ["pair,in,off,404", "pair,in,off,404"]
    before = weight_observation(report(tmp_path, *lines).weighed[0], "w.csv")
    after = weight_observation(report(tmp_path, *lines, "pair,in,on,521").weighed[0], "w.csv")
    changed = weight_observation(report(tmp_path, lines[0], "pair,in,off,405").weighed[0], "w.csv")
    assert before is not None
    assert before == after
    assert changed is not None
    assert changed.note != before.note


def test_cells_tell_one_thing_from_two(tmp_path: Path) -> None:
    lines = ("pair,in,off,404", "pair,in,off,404", "pair,out,off,381", "pair,out,off,381")
    (same,) = report(tmp_path, *lines, battery=BATTERY).cells
    assert same.check is not None
    assert (same.check.one_thing, same.check.seen_g) == (True, 23.0)
    (other,) = report(tmp_path, *lines[:2], "pair,out,off,375", "pair,out,off,375", battery=BATTERY).cells
    assert other.check is not None
    assert not other.check.one_thing


@pytest.mark.parametrize(
    ("battery", "because"),
    [
        (BATTERY | {"count": "unknown"}, "does not say how many cells"),
        (BATTERY | {"cell_weight_g": "unknown"}, "does not say how many cells"),
        ("unknown", "does not say how many cells"),
    ],
)
def test_cells_that_nobody_knows_settle_nothing(tmp_path: Path, battery: Any, because: str) -> None:
    (pair,) = report(tmp_path, "pair,in,off,404", "pair,out,off,381", battery=battery).cells
    assert pair.check is None
    assert because in pair.because


def test_one_pedal_holds_half_the_cells(tmp_path: Path) -> None:
    lines = ("one pedal,in,off,202", "one pedal,out,off,190.5")
    (pair,) = report(tmp_path, *lines, battery=BATTERY).cells
    assert pair.check is not None
    assert pair.check.expected_g == 11.5
    (odd,) = report(tmp_path, *lines, battery=BATTERY | {"count": 3}).cells
    assert odd.because == "3 cells do not divide by two pedals"


def test_what_is_dated_later_is_not_seen_and_a_stranger_is_named(tmp_path: Path) -> None:
    read = rows(tmp_path, "pair,in,off,404")
    near = worlds.catalog([worlds.product("some-pedals")], [])
    assert weigh_report(read, near, date(2026, 3, 11)).weighed == ()
    told = render(weigh_report(read, near, worlds.DAY).problems, "plain")
    assert "warning: product: the catalog has no 'some-pedal'; did you mean some-pedals?" in told
    far = weigh_report(read, worlds.catalog([worlds.product("other")], []), worlds.DAY)
    assert "there is no claim to hold it to" in render(far.problems, "plain")
    assert far.weighed[0].held is None
    assert basis_of(far.weighed[0].weighing)["batteries"] == "in"
