"""`answer --log` and `recheck`."""

from command_line import copied, read, run


def test_a_logged_answer_holds_until_a_price_takes_its_place(tmp_path):
    catalog, log = copied(tmp_path), tmp_path / "answers.jsonl"
    asked = ("answer", "--buyer", "club-racer", "--log", log)
    assert run(*asked, catalog=catalog).exit_code == 0

    before = read("recheck", log, catalog=catalog)
    assert [a["verdict"] for a in before["answers"]] == ["holds"]
    pick = before["answers"][0]["pick_then"]
    other = "tarnquell-liskar-duo" if pick != "tarnquell-liskar-duo" else "brellowick-ferrowen-2"
    assert run("price", "add", other, "201", "--seller", "Lock Cycles", catalog=catalog).exit_code == 0

    after = read("recheck", log, catalog=catalog)["answers"][0]
    assert (after["verdict"], after["pick_now"]) == ("no longer holds", other)
    assert {"product": other, "what": "price"}.items() <= after["because"][0].items()
    text = run("recheck", log, catalog=catalog, columns=200).stdout
    assert "To paste: We told you" in text
    assert text.rstrip().endswith("1 answer read again: 0 still good, 1 no longer.")


def test_a_log_that_cannot_be_read_exits_5_and_a_bad_line_3(tmp_path):
    assert run("recheck", tmp_path / "none.jsonl").exit_code == 5
    log = tmp_path / "answers.jsonl"
    run("answer", "--buyer", "phone-only", "--log", log)
    log.write_text(log.read_text() + "{}\n")
    result = run("recheck", log)

    assert result.exit_code == 3
    assert ":2:1: error: is not an entry of an answer log" in result.stderr
    assert "1 answer read again" in result.stdout


def test_a_torn_last_line_is_taken_out_on_request_only(tmp_path):
    log = tmp_path / "answers.jsonl"
    run("answer", "--buyer", "phone-only", "--log", log)
    whole = log.read_bytes()
    log.write_bytes(whole + b'{"schema":"spin')

    plain = run("recheck", log)
    assert plain.exit_code == 3
    assert "the last line has no end; `spindlewise recheck --repair` takes it out" in plain.stderr
    refused = run("answer", "--buyer", "phone-only", "--log", log)
    assert refused.exit_code == 5
    assert "its last line is torn; run `spindlewise recheck --repair` first" in refused.stderr
    assert log.read_bytes() == whole + b'{"schema":"spin'

    mended = run("recheck", log, "--repair")
    assert mended.exit_code == 0
    assert "took out" in mended.stderr
    assert log.read_bytes() == whole
    assert (tmp_path / "answers.jsonl.torn-1").read_bytes() == whole + b'{"schema":"spin'
    assert "nothing was changed" in run("recheck", log, "--repair").stderr


def test_body_data_is_kept_only_when_asked(tmp_path):
    log = tmp_path / "answers.jsonl"
    run("answer", "--buyer", "club-racer", "--log", log)
    assert "balance_left_pct" not in log.read_text()
    run("answer", "--buyer", "club-racer", "--log", log, "--keep-private")
    assert "balance_left_pct" in log.read_text()
