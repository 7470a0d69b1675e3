"""What is kept of an answer, and that it is read back as it was."""

import json
import random

import pytest

import worlds
from spindlewise.answer.answer_log import append_answer, digest, read_answers, to_log
from spindlewise.answer.private import without_private
from spindlewise.answer.ranking import rank
from spindlewise.answer.sealed_line import sealed
from spindlewise.catalog.durable import CannotWrite

PRIVATE = {
    "needs": {"rider_mass_kg": 100.0},
    "riding": {"balance_left_pct": {"low": 47.0, "high": 48.0}},
    "body": {"height_mm": 1780.0},
}


def limit(name, kilos):
    return worlds.product(name, {"rider_limit_kg": (worlds.seen(kilos, grade="claimed"),)})


def entry(keep_private=False, **buyer):
    products = [limit("heron", 110.0), limit("siskin", 90.0)]
    desk = worlds.desk(products, [worlds.price("heron", 500), worlds.price("siskin", 400)])
    return to_log(desk, rank(desk, worlds.buyer(**buyer)), keep_private)


def test_an_entry_is_read_back_as_it_was_written(tmp_path):
    log = tmp_path / "answers.jsonl"
    first, second = entry(budget=600), entry(keep_private=True, **PRIVATE)
    append_answer(log, first)
    append_answer(log, second)
    found, problems = read_answers(log, "answers.jsonl")

    assert problems == []
    assert [(e.buyer, e.pick, e.rests_on, e.digest, e.line) for e in found] == [
        (first.buyer, "siskin", first.rests_on, first.digest, 1),
        (second.buyer, "heron", second.rests_on, second.digest, 2),
    ]


def test_body_rider_weight_and_balance_are_not_kept_unless_asked(tmp_path):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry(**PRIVATE))
    text = log.read_text()

    for secret in ("1780", "100.0", "47", "height", "balance_left", "rider_mass"):
        assert secret not in json.dumps(json.loads(text)["buyer"])
    assert "100 kg" not in text
    append_answer(log, entry(keep_private=True, **PRIVATE))
    assert "1780" in log.read_text()


def test_what_failed_the_riders_weight_stays_barred_without_the_weight_itself():
    found = entry(**PRIVATE)

    assert found.barred == ("siskin",)
    assert (found.pick, found.pick_without_private) == ("heron", "heron")
    assert found.buyer == without_private(found.buyer)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("{", "is not JSON"),
        ("[]", "is not an entry of an answer log"),
        (
            '{"schema": "spindlewise logged answer 9"}',
            "was written for a newer Spindlewise: this one reads logged answer 2, it is logged answer 9; upd",
        ),
        ('{"schema": "spindlewise rank 1"}', "has another schema than 'spindlewise logged answer 2'"),
        ('{"schema": "spindlewise logged answer 2"}', "its seal does not fit"),
        ('{"schema": "spindlewise logged answer 1"}', "lacks a part of an entry"),
        ("x" * 1_000_001, "is 1000001 bytes long, 1000000 at most"),
    ],
)
def test_a_line_that_is_no_entry_is_a_problem_and_the_others_are_read(tmp_path, line, message):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry())
    log.write_text(log.read_text() + line + "\n")
    append_answer(log, entry())
    found, problems = read_answers(log, "answers.jsonl")

    assert [e.line for e in found] == [1, 3]
    assert [(p.place.line, message in p.message) for p in problems] == [(2, True)]


def rewritten(log, change, seal):
    """The one entry of a log, changed by hand and sealed again, or as the first version wrote it."""
    record = json.loads(log.read_text())
    del record["seal"]
    change(record)
    if not seal:
        record["schema"] = "spindlewise logged answer 1"
    log.write_bytes((sealed(record) if seal else json.dumps(record).encode()) + b"\n")


@pytest.mark.parametrize(("old", "new"), [('"500.00"', '"400.00"'), ('"pick":"siskin"', '"pick":"heron"')])
def test_an_entry_that_was_changed_afterwards_is_found(tmp_path, old, new):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry())
    assert old in log.read_text()
    log.write_text(log.read_text().replace(old, new))

    assert "was changed after it was written" in read_answers(log, "a")[1][0].message


def test_an_entry_of_the_first_version_is_read_and_held_to_the_digest_that_it_has(tmp_path):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry())
    rewritten(log, lambda record: None, seal=False)
    assert read_answers(log, "a")[1] == []
    rewritten_line = log.read_text().replace('"500.00"', '"400.00"')
    log.write_text(rewritten_line)
    assert "its digest does not fit" in read_answers(log, "a")[1][0].message


def test_a_question_that_no_longer_fits_the_model_is_a_problem(tmp_path):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry())
    rewritten(log, lambda record: record["buyer"].update(region="e u"), seal=True)

    assert "its question cannot be read" in read_answers(log, "a")[1][0].message


def test_a_torn_last_line_and_a_missing_log_are_said(tmp_path):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry())
    log.write_text(log.read_text() + '{"schema"')

    assert [p.rule for p in read_answers(log, "a")[1]] == ["torn-line"]
    with pytest.raises(CannotWrite):
        append_answer(log, entry())
    assert [p.rule for p in read_answers(tmp_path / "none.jsonl", "a")[1]] == ["unreadable-file"]


def test_the_digest_does_not_depend_on_the_order_of_keys():
    assert digest({"a": 1, "b": 2}) == digest({"b": 2, "a": 1})


def test_each_of_500_flipped_bits_of_a_log_is_found(tmp_path):
    log, draw = tmp_path / "answers.jsonl", random.Random(20261120)
    append_answer(log, entry())
    append_answer(log, entry(keep_private=True, **PRIVATE))
    whole = log.read_bytes()
    ends = [8 * at + bit for at, byte in enumerate(whole) if byte == 10 for bit in range(8)]
    for at in [*ends, *draw.sample(range(8 * len(whole)), 500)]:
        changed = bytearray(whole)
        changed[at // 8] ^= 1 << at % 8
        log.write_bytes(changed)
        assert read_answers(log, "a")[1], at


def test_a_log_of_nothing_but_wrong_lines_is_not_read_to_its_end(tmp_path):
    log = tmp_path / "answers.jsonl"
    append_answer(log, entry())
    log.write_text(log.read_text() + "{}\n" * 5000)
    found, problems = read_answers(log, "answers.jsonl")
    assert len(found) == 1
    assert [problem.rule for problem in problems[-2:]] == ["logged-answer", "too-many-problems"]
    assert len(problems) == 1002
