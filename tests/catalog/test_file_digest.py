import hashlib

from spindlewise.catalog.file_digest import FileDigest, digest_of, digests


def test_a_file_and_its_beginning(tmp_path):
    path, data = tmp_path / "a", bytes(range(256)) * 9000
    path.write_bytes(data)
    assert digest_of(path) == FileDigest(len(data), hashlib.sha256(data).hexdigest())
    for size in (0, 1, 1 << 20, (1 << 20) + 1, len(data), len(data) + 5):
        begun = data[:size]
        assert digest_of(path, size) == FileDigest(len(begun), hashlib.sha256(begun).hexdigest())


def test_no_plain_file_has_no_digest(tmp_path):
    assert digest_of(tmp_path / "none") is None
    assert digest_of(tmp_path) is None


def test_a_catalogs_files_without_its_buyers_its_locks_and_its_notes(tmp_path):
    kept = ["bench/rides/r/ride.yaml", "bench/weighings.csv", "catalog.yaml", "prices.csv", "products/a.yaml"]
    other = ["bench/.hidden/x", "bench/.w.lock", "buyers/b.yaml", "products/.p.lock", "README.md"]
    for name in kept + other:
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(name)
    assert sorted(digests(tmp_path)) == kept
    assert digests(tmp_path / "none") == {}
