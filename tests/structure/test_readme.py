"""The README's commands run as they stand, in order, in a fresh folder."""

import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text("utf-8")
FILE = re.compile(r"^```csv (\S+)\n(.*?)^```$", re.M | re.S)
LINE = re.compile(r"^\$ (?P<command>spindlewise .*?)(?:\s+# exit (?P<codes>[0-9 or]+))?$")


def commands() -> list[tuple[list[str], set[int]]]:
    blocks = re.findall(r"^```console\n(.*?)^```$", README, re.M | re.S)
    found = []
    for line in "".join(blocks).splitlines():
        match = LINE.match(line)
        if match:
            codes = {int(code) for code in (match["codes"] or "0").split(" or ")}
            found.append((shlex.split(match["command"])[1:], codes))
    return found


def files_before(command: list[str]) -> dict[str, str]:
    """The files that the README shows, as soon as the catalog is there that they go into."""
    return {} if command[:2] == ["new", "catalog"] else dict(FILE.findall(README))


def test_there_are_commands_to_run():
    assert len(commands()) >= 15


@pytest.mark.slow
def test_every_command_ends_as_the_readme_says(tmp_path):
    for arguments, codes in commands():
        for name, text in files_before(arguments).items():
            if (tmp_path / name.split("/")[0]).is_dir():
                (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
                (tmp_path / name).write_text(text, "utf-8")
        ran = subprocess.run(
            [sys.executable, "-c", "from spindlewise.cli.main import run; run()", *arguments],
            cwd=tmp_path,
            capture_output=True,
            text=True,
            timeout=120,
            check=False,
        )
        assert ran.returncode in codes, f"{arguments}\n{ran.stdout}\n{ran.stderr}"
    assert (tmp_path / "site" / "index.html").is_file()
    weighed = tmp_path / "pedals/bench/observations/example-pedal-weight-2025-11-20.yaml"
    assert "value: 401" in weighed.read_text("utf-8")
    assert "401 g" in (tmp_path / "site" / "products" / "example-pedal.html").read_text("utf-8")
    assert (tmp_path / "answers.jsonl").read_text().count("\n") == 1


def test_every_command_of_the_program_is_in_the_readmes_table():
    from spindlewise.cli.main import app

    names = {command.name or command.callback.__name__ for command in app.registered_commands}
    names |= {group.name for group in app.registered_groups}
    table = README.split("## Commands")[1].split("## ")[0]
    missing = [name for name in names if f"`{name}" not in table]

    assert missing == []


def test_make_targets_that_the_readme_names_exist():
    makefile = (ROOT / "Makefile").read_text("utf-8")
    for target in re.findall(r"^\$ make (\w+)", README, re.M):
        assert re.search(rf"^{target}:", makefile, re.M), target


def test_the_repository_says_nothing_of_the_machine_it_was_made_on():
    """No path of a machine and no registry's address stands in any text file of the repository."""
    listed = subprocess.run(
        ["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout.split("\0")
    needles = [b"/wo" + b"rk/", b"/ro" + b"ot/", b"py" + b"pi.org", b"npm" + b"js"]
    found = [
        name
        for name in listed
        if name and (ROOT / name).is_file() and any(n in (ROOT / name).read_bytes() for n in needles)
    ]
    assert found == []
