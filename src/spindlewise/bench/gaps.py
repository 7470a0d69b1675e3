"""Dropouts told from coasting: what a silent stretch of one recording is, by the evidence of the others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from spindlewise.bench.recording import BoolArray, FloatArray

SHORTEST_S = 2
"""Design choice, no source: one silent second is the rounding of two clocks."""

PEDALLING_W = 20.0
"""Design choice, no source: from here on a meter says that somebody pedals."""

PAUSE_S = 10
"""Design choice, no source: a recorder that alone writes nothing for so long was stopped."""

MOST_UNTOLD = 0.5
"""Design choice, no source: where more of the silence cannot be told, nothing is said of the ride."""

Kind = Literal["dropout", "coasting", "pause", "cannot tell"]


@dataclass(frozen=True, slots=True)
class Silence:
    """A run of seconds in which one recording has no power or zero: its first second, its length, what it is.

    `zeros_s` of its seconds were recorded as zero, the others are missing. `because` says what told it.
    """

    start_s: float
    length_s: int
    zeros_s: int
    kind: Kind
    because: str


@dataclass(frozen=True, slots=True)
class Dropouts:
    """What the silences of one recording come to. `verdict` is `cannot tell` where most of them are not told.

    `dropout_s` is the number of seconds lost, `untold_s` those that could be lost, `lost_pct` the lost
    seconds in percent of `ridden_s`, the seconds between its first row and its last in which it or another
    pedals.
    """

    name: str
    silences: tuple[Silence, ...]
    dropout_s: int
    untold_s: int
    ridden_s: int
    lost_pct: float
    verdict: Literal["none", "dropouts", "cannot tell"]

    def of_kind(self, kind: Kind) -> tuple[Silence, ...]:
        """The silences of one kind."""
        return tuple(silence for silence in self.silences if silence.kind == kind)


def find_dropouts(
    name: str,
    seconds: FloatArray,
    power_w: FloatArray,
    others_w: FloatArray,
    written: BoolArray,
    others_written: BoolArray,
    edge_s: int = 1,
    interval_s: float = 1.0,
) -> Dropouts:
    """Tell each silence of a recording: dropout, coasting, pause, or cannot tell.

    All arrays run over the same aligned seconds; `others_w` and `others_written` have a row a recording.
    `edge_s` is how far edges may still be off, `interval_s` the usual time between this recording's rows. A
    silence is a run of two or more seconds without power, between this recording's first row and its last;
    the seconds between rows that are written less than once a second are none.

    - dropout: every other recording that has something to say reads pedalling through the whole silence and
      through `edge_s` on both sides: no shift of the clocks turns that into coasting;
    - coasting: every other recording reads no pedalling, the edges of the silence left out, and the silence
      is longer than an edge may be off;
    - pause: nobody's recorder wrote a row, or this one alone wrote none for ten seconds and more;
    - cannot tell: no other recording has a value there, they contradict each other, or another one's coasting
      touches the silence within the edges, so that a late clock could explain it.

    Where all is stop and start the last case takes over, and the verdict is `cannot tell`. Raises
    ValueError for arrays of unlike length.
    """
    if not len(seconds) == len(power_w) == len(written) == others_w.shape[-1] == others_written.shape[-1]:
        raise ValueError(
            "seconds, power_w, written, others_w and others_written need the same number of seconds"
        )
    silent = ~(np.nan_to_num(power_w) > 0)
    pedalling = np.where(np.isfinite(others_w), others_w >= PEDALLING_W, False)
    known = np.isfinite(others_w)
    alive = written | others_written.any(axis=0)
    silences = []
    begun, ended = _first_and_after_last(written)
    silent[:begun] = silent[ended:] = False
    for begin, end in _runs(silent):
        wrote = bool(written[begin:end].any())
        if end - begin < (SHORTEST_S if wrote else max(SHORTEST_S, 1.5 * interval_s)):
            continue
        kind: Kind
        if not wrote and end - begin >= PAUSE_S and alive[begin:end].any():
            kind, because = "pause", "this recorder alone wrote nothing"
        else:
            kind, because = _told(slice(begin, end), edge_s, pedalling, known, alive)
        zeros = int((power_w[begin:end] == 0).sum())
        silences.append(Silence(float(seconds[begin]), end - begin, zeros, kind, because))
    rode = (np.nan_to_num(power_w) > 0) | pedalling.any(axis=0)
    return _summed(name, silences, int(rode[begun:ended].sum()))


def _told(
    run: slice, edge_s: int, pedalling: BoolArray, known: BoolArray, alive: BoolArray
) -> tuple[Kind, str]:
    if not alive[run].any():
        return "pause", "no recorder wrote anything"
    wide = slice(max(run.start - edge_s, 0), run.stop + edge_s)
    cut = min(edge_s, (run.stop - run.start - 1) // 2)
    core = slice(run.start + cut, run.stop - cut)
    heard = known[:, core].any(axis=1)
    if not heard.any():
        return "cannot tell", "no other recording has a value there"
    through = (pedalling[heard, wide] | ~known[heard, wide]).all(axis=1)
    still = ~pedalling[heard, core].any(axis=1)
    if through.all():
        return "dropout", "the others pedal through it"
    if still.all() and edge_s < run.stop - run.start:
        return "coasting", "the others stand still too"
    if (through | still).all():
        return "cannot tell", "the others contradict each other"
    return "cannot tell", "another one's coasting is too near"


def _summed(name: str, silences: Sequence[Silence], ridden_s: int) -> Dropouts:
    lost = sum(silence.length_s for silence in silences if silence.kind == "dropout")
    untold = sum(silence.length_s for silence in silences if silence.kind == "cannot tell")
    told = sum(silence.length_s for silence in silences if silence.kind in ("dropout", "coasting"))
    verdict: Literal["none", "dropouts", "cannot tell"] = "dropouts" if lost else "none"
    if untold > MOST_UNTOLD * (told + untold):
        verdict = "cannot tell"
    return Dropouts(
        name=name,
        silences=tuple(silences),
        dropout_s=lost,
        untold_s=untold,
        ridden_s=ridden_s,
        lost_pct=100.0 * lost / ridden_s if ridden_s else 0.0,
        verdict=verdict,
    )


def _first_and_after_last(written: BoolArray) -> tuple[int, int]:
    rows = np.flatnonzero(written)
    return (int(rows[0]), int(rows[-1]) + 1) if len(rows) else (0, 0)


def _runs(marked: BoolArray) -> list[tuple[int, int]]:
    """The runs of marked seconds, each as its first index and the one after its last."""
    steps = np.diff(marked.astype(np.int8), prepend=0, append=0)
    return list(zip(np.flatnonzero(steps > 0).tolist(), np.flatnonzero(steps < 0).tolist(), strict=True))
