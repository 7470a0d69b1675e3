"""One folder a mistake: what a whole catalog then says, to the letter.

`bad/catalog-<case>/` holds only the files that differ from the good catalog; `<name>.absent` takes one away.
The whole printed text of all problems stands beside it in `bad/catalog-<case>.expected`.
"""

import shutil
from pathlib import Path

import pytest

from small_catalog import copied, opened
from spindlewise.problems import render

BAD = Path(__file__).parent / "bad"
CASES = sorted(path.name for path in BAD.iterdir() if path.is_dir())


def printed(parent: Path, case: str) -> str:
    folder = copied(parent)
    for path in sorted((BAD / case).rglob("*")):
        target = folder / path.relative_to(BAD / case)
        if path.suffix == ".absent":
            target.with_suffix("").unlink()
        elif path.is_file():
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(path, target)
    return render(opened(parent)[1], "plain")


@pytest.mark.parametrize("case", CASES)
def test_bad_catalog_is_reported_to_the_letter(tmp_path: Path, case: str) -> None:
    text = printed(tmp_path, case)
    assert text == (BAD / f"{case}.expected").read_text("utf-8")
    assert text


def test_every_folder_has_its_expected_text_and_every_text_its_folder() -> None:
    assert len(CASES) >= 20
    assert sorted(path.stem for path in BAD.glob("catalog-*.expected")) == CASES


def test_the_good_catalog_has_nothing_to_report(tmp_path: Path) -> None:
    copied(tmp_path)
    catalog, problems = opened(tmp_path)
    assert problems == []
    assert catalog is not None
    assert list(catalog.products) == ["skerry-duo", "skerry-solo", "slate-flat"]
