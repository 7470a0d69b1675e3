"""Who touches files, who prints or exits, and how long and how empty a module may be."""

import ast

import pytest

from structure.source_tree import Module, called, imported, modules

MODULES = modules()

READ = {
    "open",
    "read_text",
    "read_bytes",
    "glob",
    "rglob",
    "iterdir",
    "is_file",
    "is_dir",
    "exists",
    "stat",
    "lstat",
}
WRITTEN = {"write_text", "write_bytes", "mkdir", "unlink", "rename", "rmdir", "rmtree", "touch", "symlink_to"}
OURS = {"replace_file", "append_line", "create_file", "create_files"}
FILE_CALLS = READ | WRITTEN | OURS
FILES_ALLOWED = {
    "catalog.yaml_text": "reads the YAML files",
    "catalog.csv_text": "reads the tables",
    "catalog.opening": "lists what lies in a catalog",
    "catalog.bench_files": "lists what lies on a catalog's bench",
    "catalog.kept": "reads all of a catalog and of the program that reads it, to know whether they changed",
    "catalog.shelf": "keeps what was worked out",
    "catalog.durable": "is how anything is written",
    "catalog.file_digest": "holds files to their digests",
    "catalog.price_log": "appends to the price log",
    "answer.answer_log": "keeps the log of answers",
    "answer.asking": "lists the buyers of a catalog",
    "site.build": "gathers everything, then writes",
    "site.renewal": "puts a new folder in the place of the old one",
    "site.site_files": "reads the files of a published site",
    "site.rests_on": "reads the program's own code, to know whether it changed",
    "site.recorded": "reads the manifest of a published site",
    "site.single_file": "reads its own style and script",
    "site.templating": "reads its own templates",
    "site.weigh_assets": "reads the page's own style and script",
}
"""The readers and the writer; whoever else touches a file is named with the reason."""
FILE_ROOMS = {"bench": "reads recordings and weighings", "cli": "hands paths in and names files to write"}
LINES_AT_MOST = 350


def _short(module: Module) -> str:
    return module.name.removeprefix("spindlewise.")


def test_only_readers_logs_and_the_writer_touch_files() -> None:
    touching = {}
    for module in MODULES:
        if module.room in FILE_ROOMS:
            continue
        lines = [f"{line}: {name}" for line, name in called(module) if name in FILE_CALLS]
        if lines:
            touching[_short(module)] = lines
    strangers = {name: lines for name, lines in touching.items() if name not in FILES_ALLOWED}
    assert strangers == {}
    assert set(FILES_ALLOWED) <= set(touching), "an exception that is no longer needed"


def test_only_the_command_line_prints_or_exits() -> None:
    told = []
    for module in MODULES:
        if module.room == "cli":
            continue
        told += [
            f"{_short(module)}:{line}: {name}"
            for line, name in called(module, bare=True)
            if name in ("print", "exit", "quit", "input", "breakpoint")
        ]
        told += [
            f"{_short(module)}:{line}: {name}"
            for line, name in imported(module)
            if name in ("sys.exit", "sys.stdout", "sys.stderr", "os._exit", "logging")
            or name.startswith("typer")
        ]
        told += [
            f"{_short(module)}:{node.lineno}: sys.{node.attr}"
            for node in ast.walk(module.tree)
            if isinstance(node, ast.Attribute)
            and node.attr in ("stdout", "stderr", "stdin", "exit", "argv")
            and isinstance(node.value, ast.Name)
            and node.value.id == "sys"
        ]
    assert told == []


def test_nothing_but_the_command_line_asks_the_clock_or_the_environment() -> None:
    told = [
        f"{_short(module)}:{node.lineno}: {ast.unparse(node)}"
        for module in MODULES
        if module.room != "cli"
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Attribute)
        and ast.unparse(node)
        in (
            "date.today",
            "Day.today",
            "datetime.now",
            "datetime.today",
            "time.time",
            "os.environ",
            "os.getenv",
        )
    ]
    assert told == []


@pytest.mark.parametrize("module", MODULES, ids=_short)
def test_an_init_holds_its_docstring_only(module: Module) -> None:
    if module.path.name == "__init__.py":
        assert len(module.tree.body) == 1
    assert ast.get_docstring(module.tree)


def test_no_module_is_long() -> None:
    lengths = {_short(m): len(m.path.read_text("utf-8").splitlines()) for m in MODULES}
    assert {name: length for name, length in lengths.items() if length > LINES_AT_MOST} == {}


def test_no_module_is_called_by_a_word_that_says_nothing() -> None:
    nothing = {"utils", "util", "helpers", "helper", "common", "misc", "base", "manager", "engine", "shared"}
    assert [m.name for m in MODULES if nothing & set(m.name.split("."))] == []
