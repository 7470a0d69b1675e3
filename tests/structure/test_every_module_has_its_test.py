"""Every module has its test file, and every test file its module."""

from pathlib import Path

from structure.source_tree import PACKAGE, modules

TESTS = Path(__file__).parents[1]

WITHOUT: dict[str, str] = {}
"""Modules without a test file of their own, each with the reason; one that is no longer needed fails."""

FREE_ROOMS = {"laws", "upgrades", "references", "structure", "faults", "speed", "browser", "hostile"}
"""Tests that belong to no one module."""
FREE_TESTS: dict[str, str] = {
    "site/test_valid_html.py": "all pages under one checker",
    "catalog/test_bad_files.py": "one file a mistake, whatever reads it",
    "catalog/test_bad_catalogs.py": "one folder a mistake",
}


def _expected() -> dict[str, str]:
    """By module, the test file that mirrors it."""
    wanted = {}
    for module in modules():
        parts = module.name.split(".")[1:]
        if parts and module.path.name != "__init__.py":
            wanted[module.name.removeprefix(f"{PACKAGE}.")] = "/".join([*parts[:-1], f"test_{parts[-1]}.py"])
    return wanted


def test_every_module_has_its_test() -> None:
    missing = {module for module, test in _expected().items() if not (TESTS / test).is_file()}
    assert missing - set(WITHOUT) == set()
    assert set(WITHOUT) <= missing, "an exception that is no longer needed"


def test_every_test_has_its_module() -> None:
    wanted = set(_expected().values())
    found = {path.relative_to(TESTS).as_posix() for path in TESTS.rglob("test_*.py")}
    strays = {test for test in found - wanted if test.split("/")[0] not in FREE_ROOMS}
    assert strays == set(FREE_TESTS)
