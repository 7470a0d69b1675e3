import json

from spindlewise.catalog.file_digest import FileDigest
from spindlewise.site.manifest import Manifest, newer_manifest, read_manifest, sha256, stays_inside

NAMES = ("ok.html", "../up.html", "/etc/x", "a/../../b", "c:x", "a\\b", "", ".")


def test_a_manifest_reads_back():
    written = Manifest("2026-11-20", {"prices.csv": FileDigest(7, "aa")}, {"index.html": "bb"})
    assert read_manifest(written.to_bytes()) == written


def test_what_is_no_manifest_is_none():
    for data in (b"", b"[]", b"{}", b"\xff", b'{"schema": "something else"}', b"[" * 100_000):
        assert read_manifest(data) is None
        assert newer_manifest(data) is None


def whole(number, **entries):
    return json.dumps({"schema": f"spindlewise manifest {number}", "as_of": "2026-11-20", **entries}).encode()


def test_names_that_lead_out_of_the_folder_are_dropped():
    source = {"bytes": 1, "sha256": "aa"}
    found = read_manifest(whole(2, inputs=dict.fromkeys(NAMES, source), outputs=dict.fromkeys(NAMES, "aa")))
    assert found is not None
    assert list(found.outputs) == ["ok.html"]
    assert found.inputs == {"ok.html": FileDigest(1, "aa")}


def test_entries_of_another_form_are_dropped():
    odd = {"a": 1, "b": None, "c": {}, "d": {"bytes": "1", "sha256": "aa"}, "e": {"bytes": 1, "sha256": 2}}
    assert read_manifest(whole(2, inputs=odd, outputs=odd)) == Manifest("2026-11-20")
    assert read_manifest(whole(2, inputs=[], outputs=7)) == Manifest("2026-11-20")


def test_a_manifest_of_the_first_version_says_what_was_written():
    found = read_manifest(whole(1, inputs={"prices": "aa"}, outputs={"index.html": "bb"}))
    assert found == Manifest("2026-11-20", {}, {"index.html": "bb"})


def test_a_newer_manifest_is_told():
    assert read_manifest(whole(3)) is None
    told = newer_manifest(whole(3))
    assert told is not None
    assert told.endswith("; update Spindlewise, then read it again")


def test_stays_inside():
    assert stays_inside("products/one.html")
    assert not stays_inside("a//b")
    assert not stays_inside("a\nb")


def test_sha256():
    assert sha256(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
