"""A program in which the system itself forbids internet sockets: whoever opens one is killed on the spot."""

import ctypes
import platform
import struct
import subprocess
import sys
from collections.abc import Sequence

ARCHITECTURES = {"x86_64": (0xC000003E, 41), "aarch64": (0xC00000B7, 198)}
"""The kernel's name of the machine, and the number of its call `socket` (linux/audit.h, asm/unistd.h)."""
AF_INET, AF_INET6 = 2, 10
PR_SET_NO_NEW_PRIVS, PR_SET_SECCOMP, MODE_FILTER = 38, 22, 2
LOAD, JUMP_EQUAL, RETURN = 0x20, 0x15, 0x06
ALLOW, KILL_PROCESS = 0x7FFF0000, 0x80000000
KILLED = -31
"""SIGSYS, as `subprocess` tells it."""


def known() -> bool:
    """Whether the filter is written for this system and machine."""
    return sys.platform == "linux" and platform.machine() in ARCHITECTURES


def forbid_sockets() -> None:
    """From here on, opening an IPv4 or IPv6 socket ends the program; those between programs stay allowed."""
    architecture, call = ARCHITECTURES[platform.machine()]
    program = [
        (LOAD, 0, 0, 4),  # seccomp_data.arch
        (JUMP_EQUAL, 0, 6, architecture),
        (LOAD, 0, 0, 0),  # seccomp_data.nr
        (JUMP_EQUAL, 0, 4, call),
        (LOAD, 0, 0, 16),  # seccomp_data.args[0], its lower half
        (JUMP_EQUAL, 1, 0, AF_INET),
        (JUMP_EQUAL, 0, 1, AF_INET6),
        (RETURN, 0, 0, KILL_PROCESS),
        (RETURN, 0, 0, ALLOW),
    ]
    code = ctypes.create_string_buffer(b"".join(struct.pack("HBBI", *line) for line in program))
    whole = ctypes.create_string_buffer(struct.pack("HP", len(program), ctypes.addressof(code)))
    libc = ctypes.CDLL(None, use_errno=True)
    if libc.prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) or libc.prctl(PR_SET_SECCOMP, MODE_FILTER, whole, 0, 0):
        raise OSError(ctypes.get_errno(), "the filter was not taken")


def run_without_sockets(code: str, words: Sequence[object] = ()) -> subprocess.CompletedProcess[str]:
    """Run Python code with these words as its arguments, under the filter."""
    return subprocess.run(
        [sys.executable, "-c", code, *map(str, words)],
        capture_output=True,
        text=True,
        preexec_fn=forbid_sockets,
        check=False,
    )
