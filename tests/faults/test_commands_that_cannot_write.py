"""Each command that writes, where it cannot: one clear sentence, exit 5, and nothing has changed."""

import errno
import os
import resource
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock
from typer.testing import Result

from command_line import copied, run
from faults.quick_sites import gathering
from spindlewise.catalog import durable
from spindlewise.site import build

Typed = Callable[[Path], list[str | Path]]


def _price(folder: Path) -> list[str | Path]:
    return ["price", "add", "tarnquell-liskar-duo", "650", "--seller", "Corner Shop"]


def _logged(folder: Path) -> list[str | Path]:
    return ["answer", "--buyer", "club-racer", "--log", folder / "out" / "answers.jsonl"]


def _written(folder: Path) -> list[str | Path]:
    return ["answer", "--buyer", "club-racer", "--output", folder / "out" / "answer.md"]


def _batch(folder: Path) -> list[str | Path]:
    return ["answer", "--batch", folder / "q.csv", "--output", folder / "out"]


def _published(folder: Path) -> list[str | Path]:
    return ["publish", "--out", folder / "out"]


def _weighed(folder: Path) -> list[str | Path]:
    return ["bench", "weigh", "--write", folder / "out"]


def _begun(folder: Path) -> list[str | Path]:
    return ["new", "product", "new-pedal"]


def _schema(folder: Path) -> list[str | Path]:
    return ["schema", "--write", folder / "out"]


COMMANDS: dict[str, tuple[Typed, str]] = {
    "price add": (_price, "catalog/prices.csv"),
    "answer --log": (_logged, "out/answers.jsonl"),
    "answer --output": (_written, "out/answer.md"),
    "answer --batch": (_batch, "out/first.txt"),
    "publish": (_published, "out/a.html"),
    "bench weigh --write": (_weighed, "out/ansolvey-mirrowen-weight-2025-06-24.yaml"),
    "new product": (_begun, "catalog/products/new-pedal.yaml"),
    "schema --write": (_schema, "out/product.schema.json"),
}
"""What is typed, and the first file that it writes."""
NEVER_OVER = ("bench weigh --write", "new product")
"""What these write is an author's from then on."""
OLD = b"what stood there\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a catalog, questions, and a place for what is written; a site of one page is quick."""
    copied(tmp_path)
    (tmp_path / "out").mkdir()
    (tmp_path / "q.csv").write_text("id,buyer\nfirst,club-racer\n")
    monkeypatch.setattr(build, "gather_whole", gathering({"a.html": b"a page"}))
    return tmp_path


def _contents(folder: Path) -> dict[str, bytes | str]:
    return {
        path.relative_to(folder).as_posix(): str(path.readlink()) if path.is_symlink() else path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if (path.is_file() or path.is_symlink()) and path.suffix != ".lock"
    }


def _run(folder: Path, typed: Typed) -> Result:
    catalog = None if typed is _schema else folder / "catalog"
    return run(*typed(folder), catalog=catalog)


def _refused(folder: Path, command: str, told: str) -> None:
    before = _contents(folder)
    typed, _ = COMMANDS[command]
    result = _run(folder, typed)
    assert result.exit_code == 5, result.output
    last = result.stderr.splitlines()[-1]
    assert "error: " in last, result.stderr
    assert told in last
    assert "Traceback" not in result.output
    assert "Errno" not in result.output
    assert _contents(folder) == before


def test_what_is_refused_below_works_undisturbed(folder: Path) -> None:
    for typed, first in COMMANDS.values():
        result = _run(folder, typed)
        assert result.exit_code == 0, result.output
        assert (folder / first).is_file()


FULL = (errno.ENOSPC, "the disk is full")
READ_ONLY = (errno.EROFS, "the file system is read-only")
RARE = [
    (errno.EACCES, "writing is not permitted"),
    (errno.EDQUOT, "the disk space allowed is used up"),
    (errno.EIO, "the disk reports an error"),
]


@pytest.mark.parametrize(
    ("command", "code", "told"),
    [(command, *why) for command in COMMANDS for why in (FULL, READ_ONLY)]
    + [("price add", *why) for why in RARE],
)
def test_a_disk_that_takes_nothing(
    folder: Path, monkeypatch: pytest.MonkeyPatch, command: str, code: int, told: str
) -> None:
    call = "write" if code in (errno.ENOSPC, errno.EDQUOT, errno.EIO) else "open"
    real = getattr(os, call)

    def refuse(about: object, *more: object, **named: object) -> object:
        writes = call == "write" or bool(int(str(more[0])) & (os.O_WRONLY | os.O_RDWR))
        at = Path(f"/proc/self/fd/{about}").readlink() if isinstance(about, int) else Path(str(about))
        if writes and folder in at.parents and at.suffix != ".lock":
            raise OSError(code, os.strerror(code), str(at))
        return real(about, *more, **named)

    monkeypatch.setattr(os, call, refuse)
    _refused(folder, command, told)


@pytest.mark.parametrize("command", ["answer --log", "answer --output", "price add"])
def test_a_missing_folder(folder: Path, command: str) -> None:
    if command == "price add":
        (folder / "catalog").rename(folder / "elsewhere")
        _refused(folder, command, "catalog")
    else:
        (folder / "out").rmdir()
        _refused(folder, command, "the folder is not there")
        assert not (folder / "out").exists()


@pytest.mark.parametrize("command", COMMANDS)
def test_a_link_as_the_target_is_not_followed(folder: Path, command: str) -> None:
    target, mine = folder / COMMANDS[command][1], folder / "mine"
    mine.write_bytes(target.read_bytes() if target.exists() else OLD)
    target.unlink(missing_ok=True)
    target.symlink_to(mine)
    _refused(folder, command, "not overwritten" if command in NEVER_OVER else "it is a link")


@pytest.mark.parametrize("command", [command for command in COMMANDS if command != "price add"])
def test_a_folder_as_the_target(folder: Path, command: str) -> None:
    (folder / COMMANDS[command][1]).mkdir()
    _refused(folder, command, "stands there")


@pytest.mark.parametrize("command", ["price add", "answer --log"])
def test_a_log_that_another_program_holds(
    folder: Path, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    monkeypatch.setattr(durable, "LOCK_SECONDS", 0.05)
    target = folder / COMMANDS[command][1]
    with FileLock(target.with_name(f".{target.name}.lock")):
        _refused(folder, command, "another program has held it for 0.05 s")


@pytest.mark.parametrize("command", ["answer --log"])
def test_a_real_limit_of_the_system(folder: Path, command: str) -> None:
    """The system lets no file grow over 100 bytes: a true short write, nothing simulated."""
    words = [*COMMANDS[command][0](folder), "--catalog", folder / "catalog"]
    typed = [sys.executable, "-c", "from spindlewise.cli.main import run; run()", *map(str, words)]
    before = _contents(folder)
    result = subprocess.run(
        typed,
        capture_output=True,
        text=True,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100)),
        check=False,
    )
    assert result.returncode == 5, result.stderr
    assert any(
        said in result.stderr.splitlines()[-1]
        for said in ("the file would be larger than the system allows", "the disk is full")
    )
    assert "Traceback" not in result.stderr
    assert _contents(folder) == before
