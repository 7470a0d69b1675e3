import csv
import io

from small_answers import desk, reply
from spindlewise.answer.break_evens import break_evens
from spindlewise.render.rank_sheet import rank_sheet


def rows(name: str = "club-racer") -> list[dict[str, str]]:
    ranking = reply(name).ranking
    text = rank_sheet(desk().catalog, ranking, break_evens(desk(), ranking))
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def test_units_stand_in_the_head_and_figures_are_bare_numbers() -> None:
    first = rows()[0]
    assert list(first)[:6] == ["as_of", "place", "product", "name", "score", "score_low"]
    assert (first["weight_g"], first["weight_status"]) == ("346.0", "measured")
    assert float(first["reading_uncertainty_pct"]) > 0
    assert first["detail"] == "power, balance and stroke metrics"


def test_every_product_has_a_row_and_the_excluded_their_reason() -> None:
    found = rows()
    assert len(found) == 7
    out = [row for row in found if row["out_because"]]
    assert all(row["place"] == "" for row in out)
    assert any("plain pedal" in row["out_because"] for row in out)
    assert [row["place"] for row in found if row["product"] == "yttervane-koldrane"] == ["held back"]


def test_nobody_in_leaves_the_excluded() -> None:
    assert {row["place"] for row in rows("nothing-for-it")} == {""}
