"""`versus`: two products side by side."""

from command_line import read, run, widest

A, B = "brellowick-ferrowen-2", "tarnquell-liskar-duo"


def test_who_gains_where_and_what_preferring_one_costs():
    result = run("versus", A, B, "--buyer", "club-racer")

    assert result.exit_code == 0
    prose, link = result.stdout.rstrip("\n").rsplit("\n", 1)
    assert widest(prose) <= 80
    # an address is a word and stays whole, however long
    assert link.startswith("weigh.html#v=1&region=EU&")
    assert link.endswith(f"&pair={A},{B}")
    assert "Brellowick Ferrowen 2 against Tarnquell Liskar Duo" in result.stdout
    for heading in ("What preferring one costs", "Disclosure", "Before you ride"):
        assert heading in result.stdout


def test_json_has_both_products_and_the_parts_add_up():
    found = read("versus", A, B, "--buyer", "club-racer")

    assert found["schema"] == "spindlewise versus 1"
    assert [p["product"] for p in found["products"]] == [A, B]
    assert abs(sum(found["parts"].values()) - found["points_of_the_first"]) < 1e-5
    assert set(found["swap"]) >= {"saddle_mm", "stance_mm", "weight_g"}


def test_a_product_under_a_notice_leads_but_is_held_back():
    result = run("versus", A, "yttervane-koldrane", "--buyer", "club-racer", columns=200)

    assert "but a safety notice holds it back" in result.stdout
    assert "is held back by a safety notice, whatever it costs" in result.stdout


def test_needs_that_fail_are_told():
    result = run("versus", A, "tarnquell-liskar-mono", "--buyer", "club-racer", columns=200)

    assert "Needs that are not met" in result.stdout


def test_without_money_among_the_weights_no_price_would_change_it():
    result = run("versus", A, B, "--weights", "weight=1", columns=200)

    assert "Neither price nor ownership is weighed" in result.stdout


def test_one_product_twice_or_an_unknown_one_is_wrong_usage():
    assert run("versus", A, A).exit_code == 2
    assert "did you mean" in run("versus", A, "tarnquell-liskar-dou").stderr
