"""`answer --batch`: a form's questions."""

import csv
import json

from command_line import run

GOOD = "id,buyer,budget\nfirst,club-racer,900\nsecond,phone-only,\nthird,club-racer,10\n"


def test_a_table_with_one_line_a_question(tmp_path):
    (tmp_path / "q.csv").write_text(GOOD)
    result = run("answer", "--batch", tmp_path / "q.csv")
    rows = list(csv.DictReader(result.stdout.splitlines()))

    assert result.exit_code == 0
    assert [row["id"] for row in rows] == ["first", "second", "third"]
    assert rows[0]["pick"]
    assert rows[0]["costs"] == f"{rows[0]['currency']} {rows[0]['price']}", "for people as everywhere else"
    assert (rows[2]["pick"], rows[2]["because"]) == ("", "nothing meets the needs")
    assert "3 of 3 questions answered." in result.stderr


def test_bad_lines_are_told_and_the_others_answered(tmp_path):
    (tmp_path / "q.csv").write_text(GOOD + "fourth,nobody,5\nfifth,,\n")
    result = run("answer", "--batch", tmp_path / "q.csv")

    assert result.exit_code == 3
    assert "q.csv:5:8: error: buyer: the catalog has no buyer 'nobody'" in result.stderr
    assert "4 of 5 questions answered." in result.stderr


def test_what_is_no_file_of_questions_exits_5(tmp_path):
    missing = run("answer", "--batch", tmp_path / "none.csv")
    assert (missing.exit_code, "none.csv:1:1: error: is not there" in missing.stderr) == (5, True)
    assert run("answer", "--batch", tmp_path).exit_code == 5


def test_an_answer_is_not_written_through_a_link(tmp_path):
    (tmp_path / "q.csv").write_text(GOOD)
    mine = tmp_path / "mine.txt"
    mine.write_text("mine")
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "first.txt").symlink_to(mine)
    result = run("answer", "--batch", tmp_path / "q.csv", "--output", tmp_path / "out")
    assert result.exit_code == 5
    assert "it is a link" in result.stderr
    assert mine.read_text() == "mine"


def test_a_folder_that_cannot_be_made_exits_5(tmp_path):
    (tmp_path / "q.csv").write_text(GOOD)
    (tmp_path / "file").write_text("mine")
    result = run("answer", "--batch", tmp_path / "q.csv", "--output", tmp_path / "file")
    assert result.exit_code == 5
    assert (tmp_path / "file").read_text() == "mine"


def test_one_file_for_each_question_in_the_form_asked_for(tmp_path):
    (tmp_path / "q.csv").write_text(GOOD)
    plain = run("answer", "--batch", tmp_path / "q.csv", "--output", tmp_path / "texts")
    whole = run("answer", "--batch", tmp_path / "q.csv", "-o", tmp_path / "whole", "--format", "markdown")
    data = run("answer", "--batch", tmp_path / "q.csv", "-o", tmp_path / "data", "--json")

    assert [plain.exit_code, whole.exit_code, data.exit_code] == [0, 0, 0]
    assert sorted(p.name for p in (tmp_path / "texts").iterdir()) == ["first.txt", "second.txt", "third.txt"]
    assert "Our pick:" in (tmp_path / "texts" / "first.txt").read_text()
    assert (tmp_path / "whole" / "first.md").read_text().startswith("# ")
    assert json.loads((tmp_path / "data" / "third.json").read_text())["pick"] is None


def test_a_region_that_cannot_be_served_is_a_problem_of_its_line(tmp_path):
    (tmp_path / "q.csv").write_text("id,region,currency\nfirst,ZZ,EUR\nsecond,EU,EUR\n")
    result = run("answer", "--batch", tmp_path / "q.csv")

    assert result.exit_code == 3
    assert ":2:1: error: first: the catalog knows no region ZZ" in result.stderr
    assert "1 of 2 questions answered." in result.stderr


def test_a_file_that_is_not_there_exits_5(tmp_path):
    assert run("answer", "--batch", tmp_path / "none.csv").exit_code == 5


def test_too_few_bytes_are_wrong_usage_and_enough_are_kept_to(tmp_path):
    short = run("answer", "--buyer", "club-racer", "--format", "text", "--max-bytes", "4000")
    assert short.exit_code == 0
    assert len(short.stdout.encode()) <= 4000
    assert "Disclosure" in short.stdout
    refused = run("answer", "--buyer", "club-racer", "--max-bytes", "50")
    assert refused.exit_code == 2
    assert "what must be said takes" in refused.stderr
