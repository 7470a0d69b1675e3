import subprocess
import sys

import pytest

from command_line import SMALL, run
from spindlewise.cli import main

HEAVY = ("numpy", "pandas", "scipy", "jinja2", "pydantic", "yaml", "babel", "altair", "http.server")


def test_help_names_every_command_with_a_whole_sentence() -> None:
    text = run("--help", catalog=None).stdout
    lines = text[text.index("Commands:") :].splitlines()[1:]
    listed = [line for line in lines if line.startswith("  ") and line.strip()[0].islower()]
    names = {line.split()[0] for line in listed if len(line.split()) > 2}
    assert names >= {"check", "rank", "answer", "swap", "ladder", "price", "publish", "new", "schema"}
    assert not any(line.endswith("...") for line in lines)
    assert "Exit codes: 0 done" in text


def test_no_command_is_wrong_usage_and_shows_the_help() -> None:
    result = run(catalog=None)
    assert result.exit_code == 2
    assert "Commands:" in result.output


def test_a_misspelt_command_is_met_with_the_near_one() -> None:
    result = run("rnak", catalog=None)
    assert result.exit_code == 2
    assert "rank" in result.stderr


def test_the_version_is_said() -> None:
    result = run("--version", catalog=None)
    assert result.exit_code == 0
    assert result.stdout.startswith("spindlewise ")


def test_help_loads_nothing_heavy() -> None:
    code = (
        "import sys; sys.argv = ['spindlewise', '--help']\n"
        "from spindlewise.cli.main import run\n"
        "try:\n    run()\nexcept SystemExit:\n    pass\n"
        f"print([name for name in {HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_ranking_does_without_pandas_scipy_and_jinja2() -> None:
    code = (
        f"import sys; sys.argv = ['spindlewise', 'rank', '--region', 'EU', '--catalog', {str(SMALL)!r}]\n"
        "from spindlewise.cli.main import run\n"
        "try:\n    run()\nexcept SystemExit:\n    pass\n"
        "print([name for name in ('pandas', 'scipy', 'jinja2', 'altair') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_bug_ends_in_a_sentence_without_a_traceback(monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(_catalog: object) -> None:
        raise ZeroDivisionError("odd")

    monkeypatch.setattr("spindlewise.cli.rank.open_desk", fails)
    result = run("rank")
    assert result.exit_code == 1
    assert "spindlewise itself failed (ZeroDivisionError: 'odd')" in result.stderr
    assert "Traceback" not in result.output


def test_a_reader_that_hangs_up_is_no_error() -> None:
    command = [
        sys.executable,
        "-c",
        "from spindlewise.cli.main import run; run()",
        "rank",
        "--catalog",
        str(SMALL),
    ]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert process.stdout is not None
    assert process.stderr is not None
    process.stdout.close()
    said = process.stderr.read()
    process.stderr.close()
    process.wait()
    assert b"Traceback" not in said
    assert b"BrokenPipe" not in said


def test_a_terminal_of_plain_letters_gets_plain_letters() -> None:
    command = [
        sys.executable,
        "-c",
        "from spindlewise.cli.main import run; run()",
        "rank",
        "--catalog",
        str(SMALL),
    ]
    done = subprocess.run(command, capture_output=True, check=False, env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0
    assert b"-----" in done.stdout
    assert b"\\u" not in done.stdout


def test_run_is_the_entry_point() -> None:
    assert callable(main.run)
