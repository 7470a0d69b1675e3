import pytest
import typer

from spindlewise.answer.market import NoMarket
from spindlewise.answer.missing import NoAnswer
from spindlewise.catalog.durable import CannotWrite
from spindlewise.cli.endings import bad_data, end_with, wrong_usage
from spindlewise.problems import Place, Problem


@pytest.mark.parametrize(
    ("error", "code", "said"),
    [
        (NoAnswer("no weight", "weigh it"), 4, "no answer: no weight; weigh it\n"),
        (NoMarket("no region X"), 4, "no answer: no region X\n"),
        (CannotWrite("log: the disk is full"), 5, "error: log: the disk is full\n"),
        (OSError(28, "No space left on device", "site/a.html"), 5, "error: site/a.html: the disk is full\n"),
        (FileNotFoundError(2, "No such file", "q.csv"), 5, "error: q.csv: is not there\n"),
        (OSError("odd"), 5, "error: odd\n"),
        (KeyError("odd"), 1, "spindlewise itself failed (KeyError: "),
    ],
)
def test_every_error_ends_in_one_line_and_its_code(
    error: Exception, code: int, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(typer.Exit) as ended:
        end_with(error)
    assert ended.value.exit_code == code
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith(said)
    assert err.count("\n") == 1


def test_what_was_typed_is_printed_safely(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit):
        wrong_usage("a\x1b[31mb")
    assert capsys.readouterr().err == "error: a\\x1b[31mb\n"


def test_warnings_are_left_out_and_several_errors_are_counted(capsys: pytest.CaptureFixture[str]) -> None:
    place = Place("a.yaml", 1, 1)
    problems = [
        Problem(place, "error", "one", "first"),
        Problem(place, "error", "two", "second"),
        Problem(place, "warning", "three", "third"),
    ]
    with pytest.raises(typer.Exit) as ended:
        bad_data(problems)
    assert ended.value.exit_code == 3
    err = capsys.readouterr().err
    assert "third" not in err
    assert "2 errors: " in err


def test_what_cannot_be_read_at_all_exits_5() -> None:
    with pytest.raises(typer.Exit) as ended:
        bad_data([Problem(None, "error", "unreadable-file", "x: is not a regular file")])
    assert ended.value.exit_code == 5
