from command_line import as_expected, read, run, widest

OLD, NEW = "lommerside-lethery", "tarnquell-liskar-duo"


def test_a_swap_is_told_at_80_columns() -> None:
    result = run("swap", OLD, NEW, "--buyer", "club-racer")
    assert result.exit_code == 0
    assert widest(result.stdout) <= 80
    as_expected("swap.txt", result.stdout)


def test_json_has_the_keys_of_the_contract() -> None:
    found = read("swap", OLD, NEW, "--buyer", "club-racer")
    assert found["schema"] == "spindlewise swap 1"
    assert set(found) >= {"saddle_mm", "stance_mm", "weight_g", "cautions"}
    assert set(found["saddle_mm"]) >= {"practice", "leg_model", "plus_minus"}
    assert found["weight_g"]["expected"] == 10
    assert found["cautions"]


def test_there_and_back_is_no_change() -> None:
    there, back = (read("swap", *pair)["saddle_mm"]["practice"] for pair in ((OLD, NEW), (NEW, OLD)))
    assert there == -back != 0


def test_a_missing_figure_is_named_and_exits_4() -> None:
    result = run("swap", OLD, "grevanik-zelvik")
    assert result.exit_code == 4
    assert "Saddle: the change cannot be said. Not known: the stack of Grevanik Zelvik" in " ".join(
        result.stdout.split()
    )
    found = read("swap", OLD, "grevanik-zelvik", code=4)
    assert found["saddle_mm"] is None
    assert any(lack["figure"] == "stack" for lack in found["missing"])


def test_an_unknown_product_is_wrong_usage_with_the_near_one() -> None:
    result = run("swap", OLD, "tarnquell-liskar-dou")
    assert result.exit_code == 2
    assert "did you mean tarnquell-liskar-duo?" in result.stderr
