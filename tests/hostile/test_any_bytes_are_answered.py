"""Whatever bytes a file has, a reader reads them or says what is wrong: no traceback, in time and memory.

The soak asks 200,000 times.
"""

import gc
import resource

import pytest
from hypothesis import HealthCheck, given, settings

from hostile.any_bytes import MEBIBYTES, TooLong, answered, broken_files, in_time
from hostile.readers import READERS, reader

DEEP = 100_000
YAML = ("product", "buyer", "criteria", "settings", "forgiven", "ride sheet")
BOMBS: dict[str, bytes] = {
    "aliases that double": b"a0: &a0 [x, x]\n"
    + b"".join(b"a%d: &a%d [*a%d, *a%d]\n" % (n, n, n - 1, n - 1) for n in range(1, 40)),
    "merge keys that double": b"a0: &a0 {x: 1}\n"
    + b"".join(b"a%d: &a%d {<<: [*a%d, *a%d]}\n" % (n, n, n - 1, n - 1) for n in range(1, 40)),
    "an alias of itself": b"a: &a [*a]\n",
    "brackets in brackets": b"[" * DEEP,
    "braces in braces": b"{a: " * DEEP,
    "lists in lists": b"- " * DEEP,
    "brackets that close": b"[" * DEEP + b"]" * DEEP,
    "a number without end": b"id: 1" + b"0" * 900_000,
    "a decimal without end": b"amount: 0." + b"3" * 900_000,
    "an exponent": b"value: 1e999999999\nother: -1e-999999999\n",
    "an octal number without end": b"a: 0o" + b"7" * 500_000,
    "one line without end": b"a" * 1_000_000,
    "only commas": b"," * 500_000 + b"\n",
    "only quotes": b'"' * 500_001 + b"\n",
    "only line feeds": b"\n" * 1_000_000,
    "only tabs": b"\t" * 500_000,
    "only carriage returns": b"\r" * 500_000,
    "ten thousand keys": b"".join(b"k%d: 1\n" % n for n in range(10_000)),
    "one key ten thousand times": b"k: 1\n" * 10_000,
    "not UTF-8": bytes(range(256)) * 1000,
    "UTF-16": "id: a\n".encode("utf-16"),
    "NUL": b"\0" * 100_000,
    "a byte order mark in the middle": b"id: a\xef\xbb\xbfb\n",
    "bidi controls": "id: \u202e\u2066abc\u2069\n".encode() * 100,
    "a terminal's commands": b"id: \x1b]0;x\x07\x1b[2J\n" * 100,
    "JSON in JSON": b'{"a":' * DEEP,
    "a JSON number without end": b'{"schema": ' + b"9" * 900_000 + b"}\n",
    "FIT of nothing": b"\x0e\x20\x54\x08\xff\xff\xff\xff.FIT\0\0" + b"\x40" * 5000,
    "nothing": b"",
}


@pytest.mark.parametrize("bomb", BOMBS)
def test_what_is_made_to_burst_a_reader_does_not(bomb: str) -> None:
    for name in READERS:
        answered(reader(name), BOMBS[bomb])


@pytest.mark.parametrize("name", READERS)
def test_every_sample_is_answered_and_the_first_is_read(name: str) -> None:
    samples = reader(name).samples
    assert answered(reader(name), samples[0])
    for raw in samples:  # as it is, and as other editors save it
        answered(reader(name), raw)
        answered(reader(name), b"\xef\xbb\xbf" + raw.replace(b"\n", b"\r\n"))
        answered(reader(name), raw.replace(b"\n", b"\r"))


@pytest.mark.parametrize("name", READERS)
def test_any_broken_file_is_answered(name: str) -> None:
    before = _most_memory()

    @settings(max_examples=150, deadline=None, database=None, suppress_health_check=list(HealthCheck))
    @given(broken_files(reader(name).samples))
    def holds(raw: bytes) -> None:
        answered(reader(name), raw)

    holds()
    assert _most_memory() - before < MEBIBYTES


def _most_memory() -> float:
    """Mebibytes: the most that this process ever held."""
    gc.collect()
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def test_an_input_that_hangs_would_be_noticed() -> None:
    with pytest.raises(TooLong), in_time(0.05):
        any(False for _ in range(10**12))
