"""What an older version wrote is read; what a newer one wrote is refused with advice."""

import json
import re
from pathlib import Path

import pytest

from command_line import SMALL, run
from spindlewise.answer.answer_log import read_answers
from spindlewise.catalog.reading import read_record
from spindlewise.problems import render
from spindlewise.site.manifest import newer_manifest, read_manifest
from upgrades.kept import KEPT, file_models, read_words, sample, split

MODELS = file_models()
ADVICE = "update Spindlewise, then read it again"


def test_every_version_of_everything_that_is_read_has_a_kept_sample() -> None:
    wanted = {(kind, n) for kind, last in map(split, read_words()) for n in range(1, last + 1)}
    assert {kind for kind, _ in wanted} >= {
        "product", "buyer", "catalog", "criteria", "forgiven", "ride", "logged-answer", "manifest"
    }  # fmt: skip
    assert [one for one in sorted(wanted) if sample(*one) is None] == []
    # links are read by the weighing page itself, which tests/browser opens; runs.csv is a question
    kept = {path.stem for path in KEPT.iterdir() if path.is_file()}
    assert kept - {f"{kind}-{n}" for kind, n in wanted} == {"link-1", "runs"}


@pytest.mark.parametrize("word", sorted(MODELS))
def test_an_authors_file_of_each_version_is_read(word: str) -> None:
    kind, last = split(word)
    for number in range(1, last + 1):
        path = sample(kind, number)
        assert path is not None
        record, _, problems = read_record(MODELS[word], path)
        assert problems == []
        assert record is not None


@pytest.mark.parametrize("word", sorted(MODELS))
def test_an_authors_file_of_a_newer_version_is_refused_with_advice(tmp_path: Path, word: str) -> None:
    kind, last = split(word)
    path = sample(kind, last)
    assert path is not None
    newer = word.replace(f" {last}", f" {last + 1}")
    text = path.read_text("utf-8")
    assert text.count(word) == 1
    changed = tmp_path / "newer.yaml"
    # what the newer version brings along is not complained of: only that it is newer
    changed.write_text(text.replace(word, newer) + "\nnew_key: {nobody: knows}\n", "utf-8")
    record, _, problems = read_record(MODELS[word], changed)
    assert record is None
    assert [problem.rule for problem in problems] == ["newer-schema"]
    told = render(problems, "plain")
    assert "was written for a newer Spindlewise" in told
    assert ADVICE in told


@pytest.mark.parametrize("number", [1, 2])
def test_answers_logged_by_each_version_are_read_again(number: int) -> None:
    log = sample("logged-answer", number)
    assert log is not None
    entries, problems = read_answers(log, log.name)
    assert problems == []
    assert [(e.buyer.id, e.private_kept, e.day.isoformat()) for e in entries] == [
        ("club-racer", True, "2026-11-20"), ("phone-only", False, "2026-11-20")
    ]  # fmt: skip
    result = run("recheck", log, catalog=SMALL)
    assert result.exit_code == 0, result.output
    assert "2 answers read again" in result.stdout


def test_an_answer_logged_by_a_newer_version_is_refused_with_advice(tmp_path: Path) -> None:
    kept = sample("logged-answer", 2)
    assert kept is not None
    log = tmp_path / "answers.jsonl"
    log.write_bytes(kept.read_bytes().replace(b"logged answer 2", b"logged answer 3"))
    result = run("recheck", log, catalog=SMALL)
    assert result.exit_code == 3
    assert result.stderr.count(ADVICE) == 2


def test_a_manifest_of_each_version_is_read_and_a_newer_one_told() -> None:
    for number in (1, 2):
        path = sample("manifest", number)
        assert path is not None
        found = read_manifest(path.read_bytes())
        assert found is not None
        assert list(found.outputs) == ["index.html"]
        assert list(found.inputs) == ([] if number == 1 else ["prices.csv"])
    newer = re.sub(rb"manifest 2", b"manifest 9", path.read_bytes())
    assert read_manifest(newer) is None
    assert ADVICE in str(newer_manifest(newer))


def test_a_whole_catalog_of_a_newer_version_ends_in_advice_and_not_in_other_complaints(
    tmp_path: Path,
) -> None:
    folder = tmp_path / "catalog"
    for path in sorted(SMALL.rglob("*")):
        if path.is_file():
            target = folder / path.relative_to(SMALL)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(path.read_bytes())
    products = sorted((folder / "products").glob("*.yaml"))
    for path in products:
        path.write_text(path.read_text("utf-8").replace("spindlewise product 1", "spindlewise product 2"))
    result = run("check", "--json", catalog=folder)
    assert result.exit_code == 3
    found = json.loads(result.stdout)["problems"]
    assert [problem["rule"] for problem in found] == ["newer-schema"] * len(products)
    assert all(problem["tip"] == ADVICE for problem in found)
