"""Power packets of the open profiles: that power is sent does not mean that balance is.

Bluetooth SIG, Cycling Power Service: Cycling Power Measurement 0x2A63, field table seen in the published XML.
ANT+ bicycle power, power-only page 0x10: seen in an open transcription. The packets are made by hand.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass

import pytest

from spindlewise.reception.reading_mode import LinkNow, ReceiverNow, receive
from spindlewise.reception.shown_balance import BALANCE_STEP_PCT, shown_balance

BALANCE, REFERENCE_LEFT, TORQUE, FROM_CRANK, WHEEL, CRANK = (1 << bit for bit in range(6))


@dataclass(frozen=True)
class Heard:
    power_w: int
    balance: float | None = None
    """A share of 0 to 1, of the left side where `of` is left; of nobody knows which where it is unknown."""
    of: str = "unknown"
    torque_nm: float | None = None
    crank: tuple[int, float] | None = None


def decode_bluetooth(packet: bytes) -> Heard:
    """Flags, power, then the optional fields in the order of their bits."""
    flags, power_w = struct.unpack_from("<Hh", packet)
    at, balance, torque_nm, crank = 4, None, None, None
    if flags & BALANCE:
        balance, at = packet[at] * 0.005, at + 1
    if flags & TORQUE:
        torque_nm, at = struct.unpack_from("<H", packet, at)[0] / 32, at + 2
    if flags & WHEEL:
        at += 6
    if flags & CRANK:
        revolutions, ticks = struct.unpack_from("<HH", packet, at)
        crank, at = (revolutions, ticks / 1024), at + 4
    assert at == len(packet)
    return Heard(power_w, balance, "left" if flags & REFERENCE_LEFT else "unknown", torque_nm, crank)


def decode_ant(page: bytes) -> Heard:
    assert page[0] == 0x10
    assert len(page) == 8
    (power_w,) = struct.unpack_from("<H", page, 6)
    share = page[2] & 0x7F
    if share == 0x7F:
        return Heard(power_w)
    return Heard(power_w, share / 100, "right" if page[2] & 0x80 else "unknown")


class TestBluetooth:
    def test_power_alone(self) -> None:
        assert decode_bluetooth(bytes.fromhex("0000fa00")) == Heard(250)
        assert decode_bluetooth(bytes.fromhex("0000fbff")) == Heard(-5)

    def test_balance_of_the_left_and_crank_revolutions(self) -> None:
        heard = decode_bluetooth(bytes.fromhex("2300fa0065e8030008"))

        assert (heard.power_w, heard.of, heard.crank) == (250, "left", (1000, 2.0))
        assert heard.balance == pytest.approx(0.505)

    def test_crank_torque_without_balance(self) -> None:
        heard = decode_bluetooth(bytes.fromhex("2c00c7001004ffffdcff"))

        assert (heard.power_w, heard.balance, heard.torque_nm) == (199, None, 32.5)

    def test_the_reference_bit_alone_brings_no_balance(self) -> None:
        assert decode_bluetooth(struct.pack("<Hh", REFERENCE_LEFT, 250)).balance is None

    def test_a_balance_without_the_reference_bit_is_nobodys(self) -> None:
        heard = decode_bluetooth(struct.pack("<HhB", BALANCE, 250, 94))

        assert heard.balance == pytest.approx(0.47)
        assert heard.of == "unknown"

    def test_the_same_byte_is_read_otherwise_without_its_flag(self) -> None:
        """The next field moves up: a receiver must go by the flag, not by the place."""
        fields = struct.pack("<HH", 1000, 2048)
        with_balance = struct.pack("<HhB", BALANCE | CRANK, 250, 101) + fields
        without = struct.pack("<Hh", CRANK, 250) + fields

        assert decode_bluetooth(with_balance).crank == decode_bluetooth(without).crank == (1000, 2.0)


class TestAnt:
    def test_power_only_page_with_the_right_sides_share(self) -> None:
        assert decode_ant(bytes.fromhex("1007b05a3930fa00")) == Heard(250, 0.48, "right")

    @pytest.mark.parametrize("unused", [0x7F, 0xFF])
    def test_power_only_page_without_balance(self, unused: int) -> None:
        assert decode_ant(bytes([0x10, 7, unused, 90, 0x39, 0x30, 0xFA, 0x00])) == Heard(250)

    def test_a_share_without_the_right_bit_is_nobodys(self) -> None:
        assert decode_ant(bytes([0x10, 7, 48, 90, 0x39, 0x30, 0xFA, 0x00])).of == "unknown"


@pytest.mark.parametrize(
    ("packet", "arrives"),
    [(struct.pack("<Hh", 0, 250), "does not arrive"), (struct.pack("<HhB", 3, 250, 94), "arrives")],
)
def test_the_same_power_arrives_with_and_without_balance(packet: bytes, arrives: str) -> None:
    heard = decode_bluetooth(packet)
    carried = "absent" if heard.balance is None else "carried"

    found = receive(
        [LinkNow("Bluetooth", "both sides", carried)],
        ReceiverNow("watch", ("Bluetooth",), 1, "cannot", "can"),
    )

    assert heard.power_w == 250
    assert (found.mode, found.balance) == ("both sides", arrives)


@pytest.mark.parametrize("share", [0.0, 0.4712, 0.4725, 0.4999, 0.5, 0.531, 1.0])
def test_shown_balance_is_what_a_packet_can_hold(share: float) -> None:
    shown = shown_balance(share, "Bluetooth").left_share
    in_the_byte = round(shown * 100 / BALANCE_STEP_PCT["Bluetooth"])

    packet = struct.pack("<HhB", BALANCE | REFERENCE_LEFT, 250, in_the_byte)

    assert decode_bluetooth(packet).balance == pytest.approx(shown, abs=1e-12)
    assert abs(shown - share) <= 0.0025 + 1e-12


@pytest.mark.parametrize("share", [0.0, 0.476, 0.485, 1.0])
def test_shown_balance_is_what_a_page_can_hold(share: float) -> None:
    shown = shown_balance(share, "ANT+").left_share

    page = bytes([0x10, 7, 0x80 | round(100 * (1 - shown)), 90, 0, 0, 0xFA, 0x00])

    heard = decode_ant(page)
    assert heard.balance is not None
    assert 1 - heard.balance == pytest.approx(shown, abs=1e-12)
