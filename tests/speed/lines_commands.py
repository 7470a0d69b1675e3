"""Lines of the bench about whole commands: help, the demo's questions, a catalog of a thousand products."""

import gc
import time

import yaml

from speed.large_catalog import write_catalog
from speed.timing import Line, by_turns, command, processes, python, ratio_line, workshop

BARE = (
    "import typer\napp = typer.Typer()\n@app.command()\ndef a(x: int = 1): pass\n@app.command()\n"
    "def b(): pass\napp()"
)
"""A typer program with nothing in it but two commands."""


def help_and_completion() -> list[Line]:
    """`--help` and what a shell asks on the tabulator key, against the help of a bare typer program."""
    bare = python(f"import sys; sys.argv[1:] = ['--help']\n{BARE}")
    lines = []
    asked = {"_SPINDLEWISE_COMPLETE": "complete_bash", "COMP_WORDS": "spindlewise ra", "COMP_CWORD": "1"}
    for what, ours in (
        ("`--help`", command("--help")),
        ("completion of a command's name", command(**asked)),
    ):
        mine, peer = processes(ours, bare)
        lines.append(ratio_line(f"{what}, whole process", mine, "bare typer `--help`", peer, "at most 2.5"))
    return lines


def demo() -> list[Line]:
    """The demo's questions against importing pandas: asked for the first time, and again."""
    pandas = python("import pandas")
    lines = []
    for words in (
        ["rank", "--buyer", "club-racer"],
        ["swap", "lommerside-lethery", "brellowick-ferrowen-2"],
        ["ladder", "--buyer", "hill-counter"],
    ):
        for told, more in (("", {}), (", nothing kept", {"SPINDLEWISE_KEEP": "no"})):
            ours, peer = processes(command(*words, **more), pandas)
            what = f"`{words[0]}` on the demo{told}, whole process"
            lines.append(ratio_line(what, ours, "import pandas", peer, "below 1"))
    return lines


def checking() -> list[Line]:
    """`check` of a thousand products against composing their texts and validating their data alone.

    Both in one process; ours reads the files, says every place, and runs all the rules of the catalog.
    """
    from spindlewise.catalog.product import Product
    from spindlewise.catalog.yaml_text import read_yaml_text
    from spindlewise.cli.check import read_all

    folder = write_catalog(workshop() / "thousand", 1000)
    texts = [path.read_text("utf-8") for path in sorted((folder / "products").iterdir())]
    data = [document.data for text in texts if (document := read_yaml_text(text, "a")[0]) is not None]

    def bound() -> None:
        gc.disable()  # ours reads so as well
        for text, plain in zip(texts, data, strict=True):
            yaml.compose(text, Loader=yaml.CSafeLoader)
            Product.model_validate(plain)
        gc.enable()

    def ours() -> None:
        problems, _ = read_all(folder)
        if problems:
            raise SystemExit(str(problems[0]))

    mine, peer = by_turns(ours, bound, 5, clock=time.process_time)
    return [
        ratio_line(
            "`check` of 1,000 products of 58 lines", mine, "libyaml composes, pydantic validates", peer, "1.5"
        )
    ]


IMPORTS = (
    "import sys, importlib\nsys.argv = ['spindlewise']\nfrom spindlewise.cli.main import app\n"
    "for name in open(%r).read().split():\n    importlib.import_module(name)\n"
)


def second_rank() -> list[Line]:
    """A question about a catalog of a thousand products that was read before, against importing alone."""
    folder = str(write_catalog(workshop() / "thousand", 1000))
    names = workshop() / "imported"
    words = ["--catalog", folder, "rank", "--buyer", "club-racer"]
    listing = (
        "import sys, atexit\n"
        f"atexit.register(lambda: open({str(names)!r}, 'w').write('\\n'.join(sorted(sys.modules))))\n"
        f"sys.argv[1:] = {words!r}\nfrom spindlewise.cli.main import run; run()"
    )
    python(listing)()
    python(listing)()  # what is needed once the catalog is kept
    importing = python(
        f"import sys, importlib\nfor name in open({str(names)!r}).read().split():\n"
        "    try: importlib.import_module(name)\n    except ImportError: pass"
    )
    ours, peer = processes(command(*words), importing, 5)
    first, _ = processes(command(*words, SPINDLEWISE_KEEP="no"), importing, 2)
    return [
        ratio_line("`rank` of 1,000 products, nothing kept", first, "importing what it needs", peer, "none"),
        ratio_line("the same again on an unchanged catalog", ours, "importing what it needs", peer, "1.3"),
    ]
