import csv
import io
from pathlib import Path

import pytest

from command_line import as_expected, copied, read, run, widest


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_the_table_fits_the_screen(columns: int) -> None:
    result = run("rank", "--buyer", "phone-only", columns=columns)
    assert result.exit_code == 0
    assert widest(result.stdout) <= columns
    assert "…" not in result.stdout
    as_expected(f"rank-{columns}.txt", result.stdout)


def test_a_very_narrow_screen_gets_entries_in_place_of_a_table() -> None:
    text = run("rank", "--buyer", "phone-only", columns=40).stdout
    assert "1; product: Pellamund Orrestad" in text


def test_explain_gives_the_reasons_for_each_place() -> None:
    result = run("rank", "--buyer", "phone-only", "--explain", "--format", "text")
    as_expected("rank-explain.txt", result.stdout)
    assert "points below Pellamund Orrestad: gains" in " ".join(result.stdout.split())


def test_json_has_the_keys_of_the_contract() -> None:
    found = read("rank", "--buyer", "club-racer")
    assert set(found) >= {"schema", "as_of", "buyer", "criteria", "order", "excluded"}
    assert found["schema"] == "spindlewise rank 1"
    assert found["as_of"] == "2026-11-20"
    assert sum(found["criteria"].values()) == pytest.approx(1)
    first, second = found["order"][:2]
    assert set(first) >= {"product", "rank", "level_with", "score", "merits", "break_even"}
    assert set(first["score"]) == {"low", "expected", "high"}
    assert first["break_even"] is None
    assert second["break_even"]["currency"] == "EUR"
    assert float(second["break_even"]["amount"]) < float(second["price"]["amount"])
    for merit in first["merits"].values():
        assert set(merit) >= {"low", "expected", "high", "value", "unit", "grade"}
        assert merit["low"] <= merit["expected"] <= merit["high"]
    assert {out["product"] for out in found["excluded"]} >= {"lommerside-lethery"}
    assert all(out["because"] for out in found["excluded"])


def test_an_unknown_figure_is_null_with_its_grade_and_never_zero() -> None:
    found = read("rank", "--weights", "weight=1", "--region", "EU")
    merit = next(p for p in found["order"] if p["product"] == "grevanik-zelvik")["merits"]["weight"]
    assert (merit["value"], merit["grade"]) == (None, "unknown")
    assert merit["low"] < merit["high"]


def test_what_a_safety_notice_holds_back_is_last_and_no_pick() -> None:
    found = read("rank", "--buyer", "club-racer")
    assert found["order"][-1]["product"] == "yttervane-koldrane"
    assert found["order"][-1]["held_back"] is True
    assert found["pick"] == found["order"][0]["product"]


def test_nothing_that_meets_the_needs_exits_4_and_still_says_who_is_out() -> None:
    found = read("rank", "--buyer", "nothing-for-it", code=4)
    assert (found["order"], found["pick"]) == ([], None)
    assert len(found["excluded"]) == 7
    result = run("rank", "--buyer", "nothing-for-it")
    assert result.exit_code == 4
    assert "No pick: nothing in the catalog meets all the needs." in result.stdout


def test_a_region_that_cannot_be_served_exits_4_with_an_empty_order() -> None:
    found = read("rank", "--region", "ZZ", code=4)
    assert (found["order"], found["excluded"]) == ([], [])
    assert "no region ZZ" in found["because"]


def test_statements_override_the_buyers_own() -> None:
    found = read("rank", "--buyer", "club-racer", "--order", "weight,price", "--budget", "620")
    assert list(found["criteria"]) == ["price", "weight"]
    assert found["criteria"]["weight"] > found["criteria"]["price"]
    assert all(float(placed["price"]["amount"]) <= 620 for placed in found["order"])


def test_a_receiver_that_hears_bluetooth_only_shows_less() -> None:
    wide = read("rank", "--receiver", "unit:ANT+,Bluetooth:pairs")["order"]
    phone = read("rank", "--receiver", "phone:Bluetooth:channels=1:no-pairs")["order"]

    def modes(order: list[dict]) -> dict[str, str]:  # type: ignore[type-arg]
        return {placed["product"]: placed["reading"][0]["mode"] for placed in order}

    assert modes(wide)["tarnquell-liskar-duo"] == "both sides"
    assert modes(phone)["tarnquell-liskar-duo"] != "both sides"


def test_without_weights_and_region_the_usual_ones_are_named_on_stderr() -> None:
    result = run("rank")
    assert result.exit_code == 0
    assert "No weights are stated" in result.stderr
    assert "EU is taken" in result.stderr
    assert "stated; usual" not in result.stdout


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--weights", "prise=3"], "did you mean price?"),
        (["--weights", "price"], "has no number"),
        (["--weights", "price=-1"], "from 0 to 1000"),
        (["--weights", "price=nan"], "from 0 to 1000"),
        (["--weights", "price=0"], "all weights are 0"),
        (["--weights", "price=1,ownership=1"], "count the same money twice"),
        (["--order", "price,price"], "names a criterion twice"),
        (["--weights", "price=1", "--order", "price"], "state them one way"),
        (["--budget", "lots"], "is no amount"),
        (["--budget", "1e400"], "is no amount"),
        (["--receiver", "watch"], "is not a receiver"),
        (["--receiver", "watch:ZZ"], "is no protocol"),
        (["--receiver", "watch:ANT+:channels=many"], "channels=N"),
        (["--region", "E U"], "is no region"),
        (["--currency", "EURO"], "is no currency"),
        (["--present", "tarnquell-liskar-du"], "did you mean tarnquell-liskar-duo?"),
        (["--buyer", "club-racr"], "did you mean club-racer?"),
        (["--format", "pdf"], "choose one of"),
        (["--buyer", "club-racer", "--region", "US"], "state one in USD too"),
    ],
)
def test_what_cannot_be_understood_is_wrong_usage_with_a_hint(words: list[str], said: str) -> None:
    result = run("rank", *words)
    assert (result.exit_code, result.stdout) == (2, "")
    assert said in result.stderr


def test_a_buyer_file_that_is_not_there_cannot_be_read(tmp_path: Path) -> None:
    result = run("rank", "--buyer", tmp_path / "nobody.yaml")
    assert result.exit_code == 5
    assert "there is no such file" in result.stderr


def test_a_buyer_file_with_errors_exits_3(tmp_path: Path) -> None:
    path = tmp_path / "club-racer.yaml"
    path.write_text(
        (copied(tmp_path) / "buyers/club-racer.yaml")
        .read_text("utf-8")
        .replace("budget: 900", "budget: much")
    )
    result = run("rank", "--buyer", path)
    assert (result.exit_code, result.stdout) == (3, "")
    assert f"{path}:8:9: error: budget" in result.stderr


def test_a_catalog_with_errors_answers_nothing(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    (folder / "rates.csv").write_text("date,base\n", "utf-8")
    result = run("rank", catalog=folder)
    assert (result.exit_code, result.stdout) == (3, "")
    assert "(csv-header)" in result.stderr


def test_csv_is_a_sheet_with_a_status_beside_each_figure() -> None:
    text = run("rank", "--weights", "weight=1,price=1", "--region", "EU", "--format", "csv").stdout
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    assert len(rows) == 7
    unknown = next(row for row in rows if row["product"] == "grevanik-zelvik")
    assert (unknown["weight_g"], unknown["weight_status"]) == ("", "unknown")
    assert rows[0]["as_of"] == "2026-11-20"
    assert float(rows[0]["price_EUR"]) > 0


def test_markdown_has_a_table() -> None:
    text = run("rank", "--buyer", "club-racer", "--format", "markdown").stdout
    assert text.startswith("# Ranking for Robin")
    assert "| ---: | --- |" in text


@pytest.mark.parametrize("form", ["terminal", "text", "markdown"])
def test_where_all_fits_on_a_screen_all_is_shown(form: str) -> None:
    plainly = run("rank", "--buyer", "phone-only", "--format", form).stdout
    assert run("rank", "--buyer", "phone-only", "--format", form, "--all").stdout == plainly


def test_a_screen_shows_so_many_places_and_a_sheet_all(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("spindlewise.render.words_rank.MOST_PLACES", 2)

    def text(*more: str) -> str:
        return " ".join(run("rank", "--buyer", "phone-only", *more).stdout.split())

    assert "give --all to see every one" in text()
    assert "give --all to see every one" in text("--format", "text", "--explain")
    assert "give --all" not in text("--all")
    assert "give --all" not in text("--format", "markdown")
    assert text("--format", "csv") == text("--format", "csv", "--all")
    assert text("--json") == text("--json", "--all")
