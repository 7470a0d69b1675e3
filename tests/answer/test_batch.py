"""A form's questions: bad lines are told apart, the others become buyers."""

import tracemalloc
from decimal import Decimal

import pytest

import worlds
from spindlewise.answer.batch import Question, Questions
from spindlewise.problems import Problem, render

BASE = worlds.buyer(budget=900, needs={"rider_mass_kg": 80.0})


def asked(text, **more):
    catalog = worlds.catalog([worlds.product("heron"), worlds.plain("gull")], [])
    raw = text if isinstance(text, bytes) else text.encode()
    return Questions(raw, "q.csv", catalog, {"tester": BASE}, **more)


def one(header, line):
    (item,) = list(asked(f"id,{header}\nq1,{line}\n"))
    return item


def buyer(header, line):
    item = one(header, line)
    assert isinstance(item, Question), item
    return item.buyer


def test_a_line_may_state_all_of_a_question():
    header = (
        "name,question,region,currency,budget,weights,sure,receiver,rider_mass_kg,shoes,reading,balance,"
        "water,present_pedals,crank_mm,new_crank_mm"
    )
    found = buyer(
        header,
        "Kim,Which?,us,usd,700.50,price=3;weight=1,very,watch:Bluetooth:no-pairs,82,three-bolt,both sides,"
        "needed,IPX6,gull,172.5,170",
    )

    assert (found.id, found.name, found.question) == ("q1", "Kim", "Which?")
    assert (found.region, found.currency, found.budget_amount) == ("US", "USD", Decimal("700.50"))
    assert (found.weights.points, found.weights.sure) == ({"price": 3.0, "weight": 1.0}, "very")
    assert found.receivers[0].pairs_two_sensors == "cannot"
    assert (found.needs.rider_mass_kg, found.needs.shoes.bolts, found.needs.water) == (
        82.0,
        "three-bolt",
        "IPX6",
    )
    assert (found.needs.reading, found.needs.balance) == ("both sides", "needed")
    assert (found.present_pedals, found.bike.crank_mm, found.bike.new_crank_mm) == ("gull", 172.5, 170.0)


def test_a_line_may_start_from_a_buyer_and_change_some_of_it():
    found = buyer("buyer,budget", "tester,600")

    assert found.budget_amount == Decimal(600)
    assert found.needs.rider_mass_kg == 80.0
    assert found.weights.points == BASE.weights.points


def test_an_order_may_be_written_with_arrows_or_semicolons():
    assert buyer("order", "weight>price").weights.order == ("weight", "price")
    assert buyer("order", "weight;price").weights.order == ("weight", "price")


def test_two_receivers_are_parted_by_a_semicolon():
    found = buyer("receiver", '"unit:ANT+;phone:Bluetooth"')

    assert [r.name for r in found.receivers] == ["unit", "phone"]


@pytest.mark.parametrize(
    ("header", "line", "printed"),
    [
        ("buyer", "nobody", "q.csv:2:4: error: buyer: the catalog has no buyer 'nobody'; there are tester"),
        ("budget", "cheap", "q.csv:2:4: error: budget: 'cheap' is no amount; write a plain number such as"),
        ("budget", "1_000", "q.csv:2:4: error: budget: '1_000' is no amount"),
        ("rider_mass_kg", "eighty", "q.csv:2:4: error: rider_mass_kg: 'eighty' is no number"),
        (
            "weights",
            "prise=3",
            "q.csv:2:4: error: weights: no criterion is called 'prise'; did you mean price?",
        ),
        ("receiver", "watch", "q.csv:2:4: error: receiver: 'watch' is not a receiver"),
        ("present_pedals", "herring", "q.csv:2:1: error: the catalog has no product herring"),
        ("shoes", "four-bolt", "q.csv:2:1: error: needs: "),
        ("crank_mm", "17", "q.csv:2:1: error: bike: "),
    ],
)
def test_a_bad_line_says_what_is_wrong_and_where(header, line, printed):
    item = one(header, line)

    assert isinstance(item, Problem)
    assert render([item], "plain").startswith(printed)


def test_the_other_lines_are_answered_and_a_repeated_id_is_told():
    items = list(asked("id,budget\nq1,600\nq2,none\nq1,700\nq3,800\n"))

    assert [isinstance(item, Question) for item in items] == [True, False, False, True]
    assert "stands in line 2 already" in items[2].message


def test_an_id_that_could_not_name_a_file_is_refused():
    item = next(iter(asked("id\n../up\n")))

    assert isinstance(item, Problem)
    assert item.message.startswith("id: ")


@pytest.mark.parametrize(
    ("text", "rules"),
    [
        ("", ["empty-file"]),
        ("id," * 2000 + "\n", ["long-line"]),
        ("name\nKim\n", ["missing-column"]),
        ("id,budgets\nq1,5\n", ["unknown-column"]),
        ("id,id\nq1,q2\n", ["repeated-column"]),
        ("id,budget\nq1\n", ["field-count"]),
        (b"id\n\xff\n", ["not-utf8"]),
    ],
)
def test_a_file_that_is_no_list_of_questions(text, rules):
    found = asked(text)

    assert [p.rule for p in found.problems] == rules
    assert len(found) == 0


def test_a_byte_order_mark_crlf_and_a_missing_last_line_end_are_what_forms_write():
    found = asked(b"\xef\xbb\xbfid,budget\r\nq1,600\r\nq2,700")

    assert found.problems == []
    assert [item.buyer.id for item in found] == ["q1", "q2"]


def test_a_line_that_is_bad_takes_no_id_from_a_later_one():
    items = list(asked("id,budget\nq1,none\nq1,700\n q1 ,800\n"))
    assert [isinstance(item, Question) for item in items] == [False, True, False]
    assert "q1 stands in line 3 already" in items[2].message


def test_the_questions_may_be_gone_through_again():
    questions = asked("id,budget\nq1,600\nq2,none\nq1,700\nq3,800,more\n")
    assert len(questions) == 3
    assert [problem.rule for problem in questions.problems] == ["field-count"]
    assert list(questions) == list(questions)
    assert len(questions.problems) == 1


def test_of_the_lines_nothing_is_kept_beside_the_file_itself():
    catalog = worlds.catalog([worlds.product("heron")], [])

    def kept(count: int) -> int:
        form = ("id,budget\n" + "".join(f"q{number},{number}\n" for number in range(count))).encode()
        tracemalloc.start()
        questions = Questions(form, "q.csv", catalog)
        found, _ = tracemalloc.get_traced_memory()
        tracemalloc.stop()
        assert len(questions) == count
        return found

    kept(10)  # what is made once, whatever is asked
    # rows would take 500 bytes each; Python itself puts some thousand empty tuples by
    assert kept(50_000) < 200_000
