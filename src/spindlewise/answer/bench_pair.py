"""Two meters of one ride: how they agree, at which power and cadence, and the three verdicts on that."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spindlewise.bench.agreement import Agreement, WithAndWithoutZeros, agreement, with_and_without_zeros
from spindlewise.bench.bands import Band, cadence_bands, even_edges, power_bands
from spindlewise.bench.concordance import Concordance, concordance
from spindlewise.bench.deming import Deming, deming
from spindlewise.bench.expected_loss import LossVerdict, expected_loss
from spindlewise.bench.independence import LEAST_IN_A_ROW
from spindlewise.bench.mean_max import BestOfTwo, mean_maximal_of_two
from spindlewise.bench.pairing import paired
from spindlewise.bench.percent import MEAN_OF_BOTH, difference_pct
from spindlewise.bench.ride_sheet import Meter
from spindlewise.bench.three_meters import ThreeMeters
from spindlewise.bench.verdicts import Verdict, agreement_verdict, plausibility_verdict, quality_verdict

FloatArray = npt.NDArray[np.float64]

POWER_STEP_W, CADENCE_STEP_RPM = 50.0, 10.0
BEHIND_THE_CHAIN = ("hub", "trainer")
LOSS_PCT = (1.4, 4.0)
"""Percent that a chain takes: 1.4 in the best drive measured (Spicer et al. 2001, J Mech Des 123:598), 4 in a
worn one is a design choice, no source. A model of road cycling takes 2.3 (Martin et al. 1998)."""


@dataclass(frozen=True, slots=True, eq=False)
class PairSeries:
    """What two meters recorded, on one clock; NaN where there is nothing to compare."""

    first_w: FloatArray
    second_w: FloatArray
    first_rpm: FloatArray
    second_rpm: FloatArray
    cadence_rpm: FloatArray
    """The cadence by which bands are told: the first of all recordings' that has one."""
    recorded_s: int
    lags_known: bool


@dataclass(frozen=True, slots=True)
class PairReport:
    """All that is said of two meters. Differences are first minus second, percent of `percent_of`.

    `power` is None in both parts, and all else empty, where fewer than twenty seconds are compared.
    `chain` says whether a chain stands between them; `loss` is None where none does, or where its loss cannot
    be judged, which `loss_because` says.
    """

    first: str
    second: str
    percent_of: str
    power: WithAndWithoutZeros
    by_power: tuple[Band, ...]
    by_cadence: tuple[Band, ...]
    concordance: Concordance | None
    deming: Deming | None
    best: tuple[BestOfTwo, ...]
    cadence: Agreement | None
    chain: bool
    loss: LossVerdict | None
    loss_because: str
    verdicts: tuple[Verdict, ...]


def pair_report(
    first: Meter,
    second: Meter,
    series: PairSeries,
    *,
    percent_of: str,
    three: ThreeMeters | None,
    missing: tuple[str, ...],
    void: str | None,
    loss_pct: tuple[float, float] = LOSS_PCT,
) -> PairReport:
    """Compare two meters; `three` are all meters of the ride, `missing` what was not noted of these two."""
    names = (first.id, second.id)
    percent_of = percent_of if percent_of in names else MEAN_OF_BOTH
    power = with_and_without_zeros(series.first_w, series.second_w, names=names, percent_of=percent_of)
    loss, loss_because = _loss(first, second, series, power, loss_pct)
    pedalling = paired(series.first_w, series.second_w, "without zeros")
    enough = power.without_zeros is not None
    return PairReport(
        first=first.id,
        second=second.id,
        percent_of=percent_of,
        power=power,
        by_power=_by_power(pedalling, names, percent_of) if enough else (),
        by_cadence=_by_cadence(pedalling, series.cadence_rpm, names, percent_of) if enough else (),
        concordance=concordance(*pedalling) if enough else None,
        deming=deming(*pedalling, error_ratio=_error_ratio(names, three)) if enough else None,
        best=mean_maximal_of_two(series.first_w, series.second_w, second=second.id) if enough else (),
        cadence=_cadence(series, names, percent_of),
        chain=chain_between(first, second),
        loss=loss,
        loss_because=loss_because,
        verdicts=_verdicts(first, second, series, power.with_zeros, loss, three, missing, void),
    )


def chain_between(first: Meter, second: Meter) -> bool:
    """Whether one of the two stands before the chain and the other behind it."""
    return (first.what in BEHIND_THE_CHAIN) != (second.what in BEHIND_THE_CHAIN)


def _verdicts(
    first: Meter,
    second: Meter,
    series: PairSeries,
    found: Agreement | None,
    loss: LossVerdict | None,
    three: ThreeMeters | None,
    missing: tuple[str, ...],
    void: str | None,
) -> tuple[Verdict, ...]:
    if found is None:
        because = (f"fewer than {LEAST_IN_A_ROW} seconds are compared",)
        return (
            Verdict("agreement", "cannot tell", because, ()),
            Verdict("data quality", "not enough", because, ()),
            Verdict("plausibility", "cannot tell", because, ()),
        )
    tolerances = (first.tolerance_pct, second.tolerance_pct)
    stated = [part for part in tolerances if not isinstance(part, str) and part > 0]
    return (
        agreement_verdict(found, (stated[0], stated[1]) if len(stated) == 2 else None),
        quality_verdict(
            found,
            recorded_s=max(series.recorded_s, found.count),
            lag_known=series.lags_known,
            missing=missing,
            void=void,
        ),
        plausibility_verdict(loss, three),
    )


def _loss(
    first: Meter,
    second: Meter,
    series: PairSeries,
    power: WithAndWithoutZeros,
    loss_pct: tuple[float, float],
) -> tuple[LossVerdict | None, str]:
    """The loss between a meter before the chain and one behind it, over the seconds that both read."""
    if not chain_between(first, second):
        return None, "no chain stands between them"
    found = power.with_zeros
    if found is None or found.mean_first <= 0 or found.mean_second <= 0:
        return None, "there is no power to compare"
    if isinstance(first.tolerance_pct, str) or isinstance(second.tolerance_pct, str):
        unknown = [meter.id for meter in (first, second) if isinstance(meter.tolerance_pct, str)]
        return None, f"the tolerance of {' and '.join(unknown)} is not stated"
    pair = paired(series.first_w, series.second_w)
    sides = [
        (pair[0], found.mean_first, first.tolerance_pct),
        (pair[1], found.mean_second, second.tolerance_pct),
    ]
    if first.what in BEHIND_THE_CHAIN:
        sides.reverse()
    (before, before_w, before_pct), (behind, behind_w, behind_pct) = sides
    interval = difference_pct(before - behind, before)
    # half of the half width: a standard error or a little more, which errs on the wide side
    standard = 0.0 if interval is None else (interval.high - interval.low) / 4.0
    if before_pct == behind_pct == standard == 0.0:
        return None, "no tolerance above zero is stated"
    loss = expected_loss(
        before_w,
        behind_w,
        loss_pct=loss_pct,
        pedals_tolerance_pct=before_pct,
        hub_tolerance_pct=behind_pct,
        ride_standard_pct=standard,
    )
    return loss, ""


def _error_ratio(names: tuple[str, str], three: ThreeMeters | None) -> float:
    """The second's error variance over the first's, where three meters tell both; else 1."""
    if three is None:
        return 1.0
    noise = {meter.name: meter.noise_w.value for meter in three.meters if not meter.noise_unseen}
    first, second = (noise.get(name, 0.0) for name in names)
    return (second / first) ** 2 if first > 0 and second > 0 else 1.0


def _by_power(
    pedalling: tuple[FloatArray, FloatArray], names: tuple[str, str], percent_of: str
) -> tuple[Band, ...]:
    edges = even_edges((pedalling[0] + pedalling[1]) / 2.0, POWER_STEP_W)
    return _claimed(power_bands(*pedalling, edges, names=names, percent_of=percent_of))


def _by_cadence(
    pedalling: tuple[FloatArray, FloatArray],
    cadence_rpm: FloatArray,
    names: tuple[str, str],
    percent_of: str,
) -> tuple[Band, ...]:
    turning = np.where(cadence_rpm > 0, cadence_rpm, np.nan)
    if not np.isfinite(turning).any():
        return ()
    edges = even_edges(turning, CADENCE_STEP_RPM)
    return _claimed(cadence_bands(*pedalling, turning, edges, names=names, percent_of=percent_of))


def _claimed(bands: tuple[Band, ...]) -> tuple[Band, ...]:
    """The bands of which anything is claimed."""
    return tuple(band for band in bands if band.mean_difference is not None)


def _cadence(series: PairSeries, names: tuple[str, str], percent_of: str) -> Agreement | None:
    """How the cadences agree, apart from power, over the seconds in which both turn."""
    one, two = paired(series.first_rpm, series.second_rpm, "without zeros")
    if np.count_nonzero(~np.isnan(one)) < LEAST_IN_A_ROW:
        return None
    return agreement(one, two, names=names, percent_of=percent_of)
