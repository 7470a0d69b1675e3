import pytest

from command_line import as_expected, read, run, widest


@pytest.mark.parametrize("columns", [80, 120])
def test_the_ladder_is_told(columns: int) -> None:
    result = run("ladder", "--buyer", "club-racer", "--from", "pellamund-orrestad", columns=columns)
    assert result.exit_code == 0
    assert widest(result.stdout) <= columns
    as_expected(f"ladder-{columns}.txt", result.stdout)


def test_json_has_the_keys_of_the_contract() -> None:
    found = read("ladder", "--buyer", "club-racer")
    assert found["schema"] == "spindlewise ladder 1"
    assert found["baseline"] == "lommerside-lethery"
    assert found["baseline_owned"] is True
    for step in found["steps"]:
        assert set(step) >= {
            "product",
            "status",
            "saving_g",
            "extra_cost",
            "cost_per_gram",
            "step_cost_per_gram",
        }
        assert set(step["saving_g"]) == {"low", "expected", "high"}
        assert step["cost_per_gram"] is None or float(step["cost_per_gram"]) > 0
    assert found["steps"][0]["status"] == "baseline"


def test_a_named_baseline_is_bought_like_the_rest() -> None:
    found = read("ladder", "--buyer", "club-racer", "--from", "pellamund-orrestad")
    assert (found["baseline"], found["baseline_owned"]) == ("pellamund-orrestad", False)


def test_without_present_pedals_there_is_no_answer_but_a_hint() -> None:
    result = run("ladder", "--region", "EU")
    assert result.exit_code == 4
    assert "name a baseline with --from PRODUCT" in result.stderr


def test_an_unweighed_baseline_has_no_answer() -> None:
    result = run("ladder", "--region", "EU", "--from", "grevanik-zelvik")
    assert result.exit_code == 4
    assert "weigh it" in result.stderr


def test_an_unknown_baseline_is_wrong_usage() -> None:
    assert run("ladder", "--from", "nothing-like-it").exit_code == 2
