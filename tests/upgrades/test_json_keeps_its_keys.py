"""All JSON that is written says its version, and a key that a version once had is there as long as it stands.

The keys of each version are kept in tests/data/kept/keys/<word>.txt, a path a line. GOLDENS=write adds
what is new and never takes a line away: who takes a key away counts the version up, and begins a new file.
"""

import ast
import json
import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from command_line import copied, run
from structure.source_tree import modules
from upgrades.kept import KEPT, WORD, read_words, split

KEYS = KEPT / "keys"
DEMO = Path(__file__).parents[2] / "catalog"
RIDES = DEMO / "bench" / "rides"
BUYER = ("--buyer", "club-racer")
PAIR = ("brellowick-ferrowen-2", "tarnquell-liskar-duo")
COMMANDS: dict[str, tuple[Any, ...]] = {
    "rank": ("rank", *BUYER),
    "answer": ("answer", *BUYER),
    "versus": ("versus", *PAIR, *BUYER),
    "ladder": ("ladder", *BUYER),
    "swap": ("swap", "lommerside-lethery", PAIR[0], "--buyer", "shorter-cranks"),
    "price history": ("price", "history", PAIR[0]),
    "price change": ("price", "at", PAIR[1], "500", *BUYER),
    "bench weigh": ("bench", "weigh"),
    "bench hours": ("bench", "hours", KEPT / "runs.csv"),
    "bench history": ("bench", "history", PAIR[0]),
    "bench ride": ("bench", "ride", RIDES / "2025-10-18-three-meters"),
    "bench rides": ("bench", "ride", RIDES),
    "recheck": ("recheck", KEPT / "logged-answer-2.jsonl"),
}
"""What is typed, with --json, to get one of each kind."""
ELSEWHERE = {"problems", "publish", "products", "weigh", "manifest", "logged answer"}
"""Kinds that a check, a publish or a log holds; each is looked at below."""
ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")
"""What a product, a buyer or a meter of the demo is called: the demo may change."""


def paths(value: Any, lead: str = "") -> Iterator[str]:
    """Every key of the data as a path; entries of a list share one.

    >>> sorted(set(paths({"order": [{"rank": 1}, {"heron-2": None}]})))
    ['order', 'order[].*', 'order[].rank']
    """
    if isinstance(value, dict):
        for key, inner in value.items():
            name = "*" if ID.fullmatch(key) else key
            path = f"{lead}.{name}" if lead else name
            yield path
            yield from paths(inner, path)
    elif isinstance(value, list):
        for inner in value:
            yield from paths(inner, f"{lead}[]")


def held(kind: str, found: dict[str, Any]) -> None:
    word = str(found["schema"])
    named = WORD.fullmatch(word)
    assert named is not None, word
    assert named[1] == kind
    file = KEYS / "{}-{}.txt".format(*split(word))
    kept = set(file.read_text("utf-8").splitlines()) if file.exists() else set()
    now = set(paths(found))
    if os.environ.get("GOLDENS") == "write":
        KEYS.mkdir(exist_ok=True)
        file.write_text("".join(f"{path}\n" for path in sorted(kept | now)), "utf-8")
        kept = kept or now
    assert kept, f"{file.name} is not there yet: GOLDENS=write begins it"
    assert sorted(kept - now) == [], f"{word} has lost keys: keep them, or count the version up"


def written_words() -> set[str]:
    """Every version word that stands in the program's text as a whole."""
    return {
        node.value
        for module in modules()
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and WORD.fullmatch(node.value)
    }


def test_every_kind_in_the_program_is_looked_at() -> None:
    kinds = {found[1] for found in map(WORD.fullmatch, written_words()) if found}
    read = {found[1] for found in map(WORD.fullmatch, read_words()) if found}
    assert kinds - read == (set(COMMANDS) | ELSEWHERE) - read
    assert len(kinds) >= 22


@pytest.mark.parametrize("kind", COMMANDS)
def test_what_a_command_prints_keeps_its_keys(kind: str) -> None:
    result = run(*COMMANDS[kind], "--json", catalog=DEMO)
    assert result.exit_code == 0, result.output
    held(kind, json.loads(result.stdout))


def test_what_a_check_prints_keeps_its_keys(tmp_path: Path) -> None:
    result = run("check", "--json", catalog=tmp_path)
    assert result.exit_code == 5, result.output
    held("problems", json.loads(result.stdout))


@pytest.mark.slow
def test_what_a_publish_writes_keeps_its_keys(tmp_path: Path) -> None:
    catalog, out = copied(tmp_path), tmp_path / "site"
    result = run("publish", "--out", out, "--json", catalog=catalog)
    assert result.exit_code == 0, result.output
    held("publish", json.loads(result.stdout))
    held("products", json.loads((out / "data" / "products.json").read_bytes()))
    held("manifest", json.loads((out / "manifest.json").read_bytes()))
    page = (out / "weigh.html").read_text("utf-8")
    data = page.partition('type="application/json"')[2].partition(">")[2].partition("</script>")[0]
    assert json.loads(data)["schema"] == "spindlewise weigh 1"  # read by the page that it stands in alone
    versions = {path: json.loads(path.read_bytes()) for path in sorted(out.rglob("*.json"))}
    assert len(versions) >= 8
    for path, whole in versions.items():
        if path.name.endswith(".schema.json"):
            assert WORD.fullmatch(whole["properties"]["schema"]["const"]), path
        else:
            assert WORD.fullmatch(whole["schema"]), path
