import json
from datetime import date

import worlds
from spindlewise.site.manifest import Manifest, input_hashes, read_manifest, sha256, stays_inside

NAMES = ("ok.html", "../up.html", "/etc/x", "a/../../b", "c:x", "a\\b", "", ".")


def test_a_manifest_reads_back():
    written = Manifest("2026-11-20", {"prices": "aa"}, {"index.html": "bb"})
    assert read_manifest(written.to_bytes()) == written


def test_what_is_no_manifest_is_none():
    for data in (b"", b"[]", b"{}", b"\xff", b'{"schema": "something else"}'):
        assert read_manifest(data) is None


def test_names_that_lead_out_of_the_folder_are_dropped():
    whole = {
        "schema": "spindlewise manifest 1",
        "as_of": "2026-11-20",
        "inputs": [],
        "outputs": dict.fromkeys(NAMES, "aa"),
    }
    found = read_manifest(json.dumps(whole).encode())
    assert found is not None
    assert list(found.outputs) == ["ok.html"]
    assert found.inputs == {}


def test_stays_inside():
    assert stays_inside("products/one.html")
    assert not stays_inside("a//b")
    assert not stays_inside("a\nb")


def test_each_input_has_its_own_hash():
    desk = worlds.desk([worlds.product("heron")], [worlds.price("heron", 500)])
    buyer = worlds.buyer()
    before = input_hashes(desk.catalog, {"tester": buyer}, date(2026, 11, 20))
    other = worlds.desk([worlds.product("heron")], [worlds.price("heron", 501)])
    after = input_hashes(other.catalog, {"tester": buyer}, date(2026, 11, 20))
    assert {name for name in before if before[name] != after[name]} == {"prices"}
    assert {"product heron", "buyer tester", "criteria", "catalog", "rates", "taxes", "as_of"} < set(before)


def test_sha256():
    assert sha256(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
