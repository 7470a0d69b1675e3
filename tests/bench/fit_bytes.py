"""A minimal writer of FIT files, for tests only: records, laps, one developer field, and the checksum."""

import struct
from collections.abc import Iterable

_CRC = (
    0x0000, 0xCC01, 0xD801, 0x1400, 0xF001, 0x3C00, 0x2800, 0xE401,
    0xA001, 0x6C00, 0x7800, 0xB401, 0x5000, 0x9C01, 0x8801, 0x4400,
)  # fmt: skip
START_OF_LAPS = 1_000_000_000
NONE = {"I": 0xFFFFFFFF, "H": 0xFFFF, "B": 0xFF}
_FIELDS = {  # number, base type, struct letter
    "timestamp": (253, 0x86, "I"),
    "power": (7, 0x84, "H"),
    "cadence": (4, 0x02, "B"),
    "left_right_balance": (30, 0x02, "B"),
    "altitude": (2, 0x84, "H"),
    "enhanced_altitude": (78, 0x86, "I"),
    "fractional_cadence": (53, 0x02, "B"),
}


def checksum(content: bytes) -> int:
    crc = 0
    for byte in content:
        for nibble in (byte & 0xF, byte >> 4):
            crc = (crc >> 4) ^ _CRC[crc & 0xF] ^ _CRC[nibble]
    return crc


def whole(messages: bytes, *, crc: int | None = None) -> bytes:
    header = struct.pack("<BBHI4sH", 14, 0x20, 2132, len(messages), b".FIT", 0)
    content = header + messages
    return content + struct.pack("<H", checksum(content) if crc is None else crc)


def definition(local: int, number: int, fields: Iterable[str]) -> bytes:
    fields = list(fields)
    lead = struct.pack("<BBBHB", 0x40 | local, 0, 0, number, len(fields))
    return lead + b"".join(
        struct.pack("<BBB", _FIELDS[f][0], struct.calcsize(_FIELDS[f][2]), _FIELDS[f][1]) for f in fields
    )


def records(rows: Iterable[dict[str, int | None]], fields: Iterable[str]) -> bytes:
    """Records as raw figures: altitude is 5 (metres + 500), a balance with 0x80 is the right pedal's."""
    fields = list(fields)
    letters = "".join(_FIELDS[f][2] for f in fields)
    out = definition(0, 20, fields)
    for row in rows:
        values = [NONE[_FIELDS[f][2]] if row.get(f) is None else row[f] for f in fields]
        out += struct.pack("<B" + letters, 0, *values)
    return out


def laps(starts: Iterable[int]) -> bytes:
    out = struct.pack("<BBBHB", 0x41, 0, 0, 19, 2) + struct.pack("<BBBBBB", 253, 4, 0x86, 2, 4, 0x86)
    for start in starts:
        out += struct.pack("<BII", 1, START_OF_LAPS, start)
    return out


def ride(powers: Iterable[int | None], start: int = 1_000_000_000, **more: Iterable[int | None]) -> bytes:
    """A whole file with one record a second; `more` are further columns."""
    powers = list(powers)
    columns = {name: list(values) for name, values in more.items()}
    rows = [
        {"timestamp": start + i, "power": p, **{name: column[i] for name, column in columns.items()}}
        for i, p in enumerate(powers)
    ]
    return whole(records(rows, ["timestamp", "power", *columns]))
