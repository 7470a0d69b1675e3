"""Law: same catalog and day, same bytes, whatever hash seed, locale, zone, file order, threads and clock.

What is asked stands in elsewhere.py: rankings and answers of every buyer in each form, and the whole site.
The soak does the same with the demo.
"""

import ast
import random
import shutil
from pathlib import Path

import pytest

from command_line import SMALL
from laws.elsewhere import (
    LOCALES,
    SEEDS,
    SIGNS,
    ZONES,
    Circumstances,
    compiled_locales,
    told_elsewhere,
    usual_circumstances,
)

PLAIN = Circumstances(hash_seed=0)
SITES = (0, 5, 10, 15, 20)
"""The seeds under which the site is made too; under the others, rankings and answers."""


@pytest.fixture(scope="module")
def locales(tmp_path_factory: pytest.TempPathFactory) -> Path | None:
    to = tmp_path_factory.mktemp("locales")
    return to if compiled_locales(to) else None


@pytest.fixture(scope="module")
def usual(locales: Path | None) -> dict[str, str]:
    found = told_elsewhere(SMALL, PLAIN, locales)
    assert sum(name.endswith(".html") for name in found) >= 10
    assert sum(name.startswith(("rank", "answer")) for name in found) >= 10
    return found


def compared(found: dict[str, str], usual: dict[str, str]) -> None:
    assert set(found) <= set(usual)
    assert [name for name, digest in found.items() if usual[name] != digest and name != SIGNS] == []


def test_the_seeds_meet_every_locale_zone_and_number_of_threads() -> None:
    under = [usual_circumstances(seed) for seed in SEEDS]
    assert [each.hash_seed for each in under] == list(range(21))
    assert {(each.locale, each.zone) for each in under} == {(loc, zone) for loc in LOCALES for zone in ZONES}
    assert {(each.locale, each.threads) for each in under} == {(loc, n) for loc in LOCALES for n in (1, 2)}
    assert max(each.days_later for each in under) > 365


def test_the_circumstances_do_reach_the_program(usual: dict[str, str], locales: Path | None) -> None:
    """Otherwise everything below would hold for nothing."""
    under = Circumstances(3, LOCALES[1], ZONES[1], file_order=9, threads=2, days_later=400, site=False)
    here, there = (ast.literal_eval(found[SIGNS]) for found in (usual, told_elsewhere(SMALL, under, locales)))
    same = [n for n, (one, other) in enumerate(zip(here, there, strict=True)) if one == other]
    assert same == ([] if locales else [1, 2])
    assert there[-1] == 400
    assert sorted(there[4]) == sorted(here[4])


@pytest.mark.slow
@pytest.mark.parametrize("seed", SEEDS)
def test_the_same_bytes_under_every_hash_seed(seed: int, usual: dict[str, str], locales: Path | None) -> None:
    found = told_elsewhere(SMALL, usual_circumstances(seed, site=seed in SITES), locales)
    assert ("index.html" in found) == (seed in SITES)
    compared(found, usual)


@pytest.mark.slow
def test_the_same_bytes_from_files_that_were_written_in_another_order(
    tmp_path: Path, usual: dict[str, str], locales: Path | None
) -> None:
    """Other inodes, other times, another folder around them: only names and bytes are the same."""
    folder = tmp_path / SMALL.name
    names = [path.relative_to(SMALL) for path in sorted(SMALL.rglob("*")) if path.is_file()]
    random.Random(7).shuffle(names)
    for name in names:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(SMALL / name, folder / name)
    found = told_elsewhere(folder, usual_circumstances(20), locales)
    compared(found, usual)
