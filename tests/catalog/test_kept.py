"""A catalog kept between runs answers as it would if it were read, and only while nothing has changed."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

import small_catalog
from spindlewise.catalog import kept, opening
from spindlewise.catalog.kept import name_of, open_kept
from spindlewise.catalog.long_log import LongLog
from spindlewise.catalog.opening import open_catalog
from spindlewise.catalog.packing import packed
from spindlewise.catalog.shelf import Shelf


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return small_catalog.copied(tmp_path)


@pytest.fixture
def shelf(tmp_path: Path) -> Shelf:
    return Shelf(tmp_path / "cache" / "spindlewise")


@pytest.fixture
def readings(monkeypatch) -> list[Path]:
    """The folders that were read, in order, rather than taken from the shelf."""
    found: list[Path] = []

    def counted(folder: Path, **more: object):
        found.append(folder)
        return open_catalog(folder, **more)

    monkeypatch.setattr(opening, "open_catalog", counted)
    return found


def same(one, other) -> bool:
    alike = ("folder", "settings", "criteria", "products", "prices", "bench_files", "unread")
    return all(getattr(one, name) == getattr(other, name) for name in alike) and (
        (one.rates.rows, one.taxes.rows) == (other.rates.rows, other.taxes.rows)
    )


def test_the_second_reading_comes_from_the_shelf_and_is_the_same(folder, shelf, readings) -> None:
    first, _ = open_kept(folder, shelf)
    second, problems = open_kept(folder, shelf)
    assert readings == [folder]
    assert problems == []
    assert same(first, second)
    assert list(second.products) == list(first.products)


def test_without_a_shelf_it_is_read_each_time(folder, readings) -> None:
    assert same(open_kept(folder, None)[0], open_kept(folder, None)[0])
    assert readings == [folder, folder]


def test_a_copy_elsewhere_is_the_same_catalog_in_its_own_folder(folder, shelf, readings, tmp_path) -> None:
    open_kept(folder, shelf)
    (tmp_path / "other").mkdir()
    copy = small_catalog.copied(tmp_path / "other")
    found, _ = open_kept(copy, shelf)
    assert readings == [folder]
    assert found.folder == copy


DUO, SLATE = "products/skerry-duo.yaml", "products/slate-flat.yaml"


def in_place(path: Path, old: str, new: str) -> None:
    """Change a file and leave its size and its times as they were."""
    before = path.stat()
    text = path.read_text("utf-8")
    assert text.count(old) == 1
    assert len(old) == len(new)
    path.write_text(text.replace(old, new), "utf-8")
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))


def added(path: Path, line: str) -> None:
    path.write_text(path.read_text("utf-8") + line, "utf-8")


ROW = "2026-04-02,skerry-solo,EU,EUR,489.00,in,street,Quay Wheels,,product page\n"
CHANGES: dict[str, Callable[[Path], object]] = {
    "a letter of a product": lambda f: in_place(f / DUO, "name: Skerry", "name: Sherry"),
    "a figure of a price": lambda f: in_place(f / "prices.csv", "899.00", "898.00"),
    "a price added": lambda f: added(f / "prices.csv", ROW),
    "a rate": lambda f: in_place(f / "rates.csv", "165.5", "166.5"),
    "a tax rate": lambda f: in_place(f / "taxes.csv", "JP,10", "JP,11"),
    "the title": lambda f: in_place(f / "catalog.yaml", "of a test", "of a text"),
    "a product taken away": lambda f: (f / SLATE).unlink(),
    "a product under another name": lambda f: (f / SLATE).rename(f / "products/slate.yaml"),
    "a stray file beside the products": lambda f: (f / "products/notes.txt").write_text("stray", "utf-8"),
    "a bench file added": lambda f: (f / "bench/more.csv").write_text("", "utf-8"),
    "a bench file taken away": lambda f: (f / "bench/weighings.csv").unlink(),
    "a file of what is forgiven": lambda f: (f / "forgiven.yaml").write_text("forgiven: none\n", "utf-8"),
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES)
def test_after_any_change_it_is_read_anew(folder, shelf, readings, change) -> None:
    open_kept(folder, shelf)
    change(folder)
    found, problems = open_kept(folder, shelf)
    assert readings == [folder, folder]
    read, told = open_catalog(folder)
    assert problems == told
    assert (found is None and read is None) or same(found, read)


def test_what_does_not_bear_on_it_changes_nothing(folder, shelf, readings) -> None:
    open_kept(folder, shelf)
    (folder / "products/.draft.yaml").write_text("hidden", "utf-8")
    added(folder / "buyers/shore-rider.yaml", "# a remark\n")
    added(folder / "bench/weighings.csv", "# what it says bears on no record\n")
    open_kept(folder, shelf)
    assert readings == [folder]


def test_another_program_reads_anew(folder, shelf, readings, monkeypatch, tmp_path) -> None:
    open_kept(folder, shelf)
    program = tmp_path / "program"
    shutil.copytree(kept.PACKAGE / "catalog", program / "catalog")
    (program / "problems.py").write_text("# nothing\n", "utf-8")
    monkeypatch.setattr(kept, "PACKAGE", program)
    open_kept(folder, shelf)
    open_kept(folder, shelf)
    assert len(readings) == 2
    added(program / "catalog/checks/price_jump.py", "MOST = 3\n")
    open_kept(folder, shelf)
    assert len(readings) == 3
    monkeypatch.setattr("pydantic.VERSION", "99.0")
    open_kept(folder, shelf)
    assert len(readings) == 4


def test_where_the_program_cannot_be_seen_nothing_is_kept(
    folder, shelf, readings, monkeypatch, tmp_path
) -> None:
    monkeypatch.setattr(kept, "PACKAGE", tmp_path / "nowhere")
    assert name_of(folder) is None
    (tmp_path / "nowhere/catalog/checks").mkdir(parents=True)
    assert name_of(folder) is None
    open_kept(folder, shelf)
    open_kept(folder, shelf)
    assert len(readings) == 2
    assert not shelf.folder.exists()


def test_a_catalog_with_errors_is_read_each_time_and_keeps_nothing(folder, shelf, readings) -> None:
    in_place(folder / "prices.csv", "2026-01-10", "2026-13-10")
    first, second = open_kept(folder, shelf), open_kept(folder, shelf)
    assert first == second
    assert first[0] is None
    assert [problem.rule for problem in first[1]] == ["impossible-date"]
    assert len(readings) == 2
    assert not shelf.folder.exists()


def test_no_catalog_at_all_is_told_as_ever(shelf, tmp_path) -> None:
    assert open_kept(tmp_path / "nowhere", shelf) == open_catalog(tmp_path / "nowhere")


def test_what_is_written_while_it_is_read_belongs_to_neither(folder, shelf, monkeypatch) -> None:
    def meanwhile(where: Path, **more: object):
        found = open_catalog(where, **more)
        added(folder / "prices.csv", ROW)
        return found

    monkeypatch.setattr(opening, "open_catalog", meanwhile)
    open_kept(folder, shelf)
    assert not shelf.folder.exists()


def kept_parts(shelf: Shelf) -> tuple[str, list[bytes]]:
    (path,) = shelf.folder.iterdir()
    parts = shelf.take(path.name)
    assert parts is not None
    return path.name, parts


@pytest.mark.parametrize(
    "spoilt",
    [
        lambda parts: parts[:-1],
        lambda parts: [*parts, b""],
        lambda parts: [b"", *parts[1:]],
        lambda parts: [parts[0], b"cposix\nsystem\n.", parts[2]],
        lambda parts: [packed(1), *parts[1:]],
        lambda parts: [packed((1, 2)), *parts[1:]],
    ],
    ids=["a part short", "a part more", "an empty part", "a call", "a number", "a short frame"],
)
def test_parts_that_are_none_of_ours_are_read_anew_and_put_right(folder, shelf, readings, spoilt) -> None:
    open_kept(folder, shelf)
    name, parts = kept_parts(shelf)
    shelf.put(name, spoilt(parts))
    assert same(open_kept(folder, shelf)[0], open_catalog(folder)[0])
    assert len(readings) == 2
    assert kept_parts(shelf) == (name, parts)


def test_a_damaged_file_is_read_anew_and_put_right(folder, shelf, readings) -> None:
    open_kept(folder, shelf)
    (path,) = shelf.folder.iterdir()
    path.write_bytes(path.read_bytes()[:-7])
    open_kept(folder, shelf)
    open_kept(folder, shelf)
    assert len(readings) == 2


def test_nothing_of_a_buyer_is_kept(folder, shelf) -> None:
    open_kept(folder, shelf)
    assert b"shore-rider" not in b"".join(kept_parts(shelf)[1])


def test_a_very_long_log_is_read_each_time(folder, shelf, readings, monkeypatch) -> None:
    monkeypatch.setattr(kept, "MOST_PRICES", 2)
    assert same(open_kept(folder, shelf)[0], open_kept(folder, shelf)[0])
    assert len(readings) == 2
    assert not shelf.folder.exists()


def test_a_log_in_columns_is_read_again_by_columns_and_no_more_of_the_catalog(
    folder, shelf, readings, monkeypatch
) -> None:
    monkeypatch.setattr("spindlewise.catalog.price_log.LARGE_BYTES", 10)
    monkeypatch.setattr(kept, "MOST_PRICES", 2)
    first, second = open_kept(folder, shelf)[0], open_kept(folder, shelf)[0]
    assert readings == [folder]
    assert isinstance(first.prices, LongLog)
    assert isinstance(second.prices, LongLog)
    assert same(first, second)
    added(folder / "prices.csv", ROW)
    third = open_kept(folder, shelf)[0]
    assert readings == [folder, folder]
    assert third.prices[:-1] == tuple(second.prices)
    assert third.prices[-1].cells() == tuple(ROW.strip().split(","))


def test_a_kept_catalog_whose_log_reads_by_columns_no_longer_is_read_anew(
    folder, shelf, readings, monkeypatch
) -> None:
    open_kept(folder, shelf)
    name, parts = kept_parts(shelf)
    shelf.put(name, [*parts[:2], packed(kept.BY_COLUMNS)])
    monkeypatch.setattr("spindlewise.catalog.long_log.long_log", lambda _: None)
    assert same(open_kept(folder, shelf)[0], open_catalog(folder)[0])
    assert len(readings) == 2


def test_a_new_file_of_the_bench_s_observations_is_read_at_once_and_a_changed_one_too(
    folder, shelf, readings
) -> None:
    open_kept(folder, shelf)
    records = folder / "bench" / "observations"
    records.mkdir(parents=True)
    name = "skerry-duo"
    record = (
        "schema: spindlewise observations 1\nproduct: {}\nobservations:\n  weight_g:\n    - grade: measured\n"
        "      date: 2026-11-02\n      source: bench\n      value: {}\n      plus_minus: 1\n"
        '      basis: {{count: pair, batteries: in, cleats: "off"}}\n'
    )
    for grams in (311, 312):
        (records / "a.yaml").write_text(record.format(name, grams))
        for _ in range(2):
            catalog, problems = open_kept(folder, shelf)
            assert catalog is not None, problems
            assert catalog.products[name].observations.weight_g[-1].value == grams
    assert len(readings) == 3
