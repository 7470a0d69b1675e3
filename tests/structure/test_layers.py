"""The one direction: cli, site, render, answer, the seven rooms of facts and mathematics, problems and units.

A room imports itself and what stands to its right; the seven never import each other.
"""

import shutil
from pathlib import Path

from structure.source_tree import PACKAGE, SRC, Module, imported, modules

CHAIN = (
    ("cli",),
    ("site",),
    ("render",),
    ("answer",),
    ("catalog", "buyer", "decide", "cost", "fit", "reception", "bench"),
    ("problems", "units"),
)
LEVEL = {room: level for level, rooms in enumerate(CHAIN) for room in rooms}


def arrows_out_of_the_chain(src: Path) -> list[str]:
    wrong = []
    for module in modules(src):
        for line, name in imported(module):
            if name.split(".")[0] == PACKAGE and not _allowed(module, name):
                wrong.append(f"{module.path.relative_to(src).as_posix()}:{line}: imports {name}")
    return wrong


def _allowed(module: Module, name: str) -> bool:
    parts = name.split(".")
    if len(parts) == 1 or parts[1] not in LEVEL:
        return False
    here, there = module.room, parts[1]
    return here in LEVEL and (here == there or LEVEL[here] < LEVEL[there])


def test_every_room_has_its_level() -> None:
    rooms = {module.room for module in modules()} - {""}
    assert rooms == set(LEVEL)


def test_data_flows_one_way() -> None:
    assert arrows_out_of_the_chain(SRC) == []


PLANTED = {
    "a room imports its neighbour": ("decide/score.py", "from spindlewise.catalog.catalog import Catalog\n"),
    "a room imports upwards": ("fit/leg.py", "import spindlewise.answer.desk\n"),
    "inside a function": ("cost/ladder.py", "def _f() -> None:\n    from spindlewise.buyer import buyer\n"),
    "by a relative name": ("bench/planted.py", "from ..reception import budget\n"),
    "by two dots and nothing": ("catalog/money.py", "from .. import answer\n"),
    "the lowest imports a room": ("units.py", "from spindlewise import catalog\n"),
    "render imports site": ("render/blocks.py", "from spindlewise.site import build\n"),
    "behind a name for types only": ("answer/desk.py", "if True:\n    import spindlewise.cli\n"),
    "a room nobody knows": ("reception/budget.py", "import spindlewise.elsewhere.thing\n"),
}


def test_every_planted_arrow_is_seen(tmp_path: Path) -> None:
    copy = tmp_path / "src"
    shutil.copytree(SRC, copy, ignore=shutil.ignore_patterns("__pycache__", "*.html", "*.js", "*.css"))
    for name, planted in PLANTED.values():
        path = copy / PACKAGE / name
        text = path.read_text("utf-8") if path.exists() else ""
        path.write_text(f"{text}\n\n{planted}", "utf-8")
    seen = arrows_out_of_the_chain(copy)
    for case, (name, _) in PLANTED.items():
        assert sum(arrow.startswith(f"{PACKAGE}/{name}:") for arrow in seen) == 1, case
    assert len(seen) == len(PLANTED)
