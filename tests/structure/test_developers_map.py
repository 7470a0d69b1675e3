"""The folder map in DEVELOPERS.md is the tree's."""

import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MAP = (ROOT / "DEVELOPERS.md").read_text("utf-8").split("## Where things are")[1].split("## ")[0]
NAMED = set(re.findall(r"^\| `([^`]+/)` \|", MAP, re.M))
MIRRORS = re.compile(
    r"tests/(?:answer|bench|buyer|catalog|cli|cost|decide|fit|reception|render|site|browser|data)(?:/.+)?/$"
    r"|tests/(?:answer|bench|buyer|catalog|cli|cost|decide|fit|reception|render|site)/$"
)
"""Folders under tests that mirror a room need no line of their own."""
CONTENTS = re.compile(r"catalog/bench/.+/|src/spindlewise/site/(?:assets|templates)/.+/|tests/browser/.+/")


def folders() -> set[str]:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout.splitlines()
    found = set()
    for name in listed:
        parts = name.split("/")[:-1]
        found |= {"/".join(parts[: i + 1]) + "/" for i in range(len(parts))}
    return {f for f in found if not f.startswith(".")}


def test_every_folder_in_the_map_exists():
    missing = [name for name in sorted(NAMED) if not (ROOT / name).is_dir()]

    assert NAMED
    assert missing == []


def test_every_folder_of_the_tree_is_in_the_map():
    unnamed = {
        name
        for name in folders() - NAMED - {"src/"}
        if not MIRRORS.fullmatch(name) and not CONTENTS.fullmatch(name)
    }

    assert unnamed == set()
