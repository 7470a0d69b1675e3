import pytest

from spindlewise.cli import printing


def test_columns_rule_the_width(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "64")
    assert printing.width() == 64
    monkeypatch.setenv("COLUMNS", "5")
    assert printing.width() == 20
    for nonsense in ("wide", "-3", "0", ""):
        monkeypatch.setenv("COLUMNS", nonsense)
        assert printing.width() == printing.PIPED_WIDTH


@pytest.mark.parametrize(
    ("environment", "coloured"), [({}, True), ({"NO_COLOR": "1"}, False), ({"TERM": "dumb"}, False)]
)
def test_colour_only_on_a_terminal_that_wants_it(
    monkeypatch: pytest.MonkeyPatch, environment: dict[str, str], coloured: bool
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr("sys.stdout.isatty", lambda: True, raising=False)
    assert printing.colour() is coloured


def test_no_colour_into_a_pipe(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    assert printing.colour() is False
