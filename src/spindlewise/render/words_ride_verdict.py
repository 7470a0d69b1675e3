"""The three verdicts on two meters, each in sentences that stand alone with their numbers."""

from spindlewise.answer.bench_pair import PairReport
from spindlewise.bench.expected_loss import LossVerdict
from spindlewise.bench.verdicts import Number, Verdict
from spindlewise.render.naming import listed
from spindlewise.units import number_text, percent_text, watts_text

MOST_NAMED = 4
"""Of more things that nobody noted their number is said, since each stands in a part of its own."""

EACH_WAY = "Neither is thereby right or wrong."


def verdict_sentences(pair: PairReport) -> tuple[str, ...]:
    """Agreement, data quality and plausibility, one entry each."""
    agreement, quality, plausibility = pair.verdicts
    return (
        f"{pair.first} and {pair.second}, agreement: {_agreement(pair, agreement)}",
        f"Data quality of these two: {_quality(quality)}",
        f"Plausibility: {_plausibility(pair, plausibility)}",
    )


def _agreement(pair: PairReport, verdict: Verdict) -> str:
    found = pair.power.with_zeros
    if found is None or found.difference_pct is None:
        return f"cannot tell; {listed(verdict.because)}."
    pct = found.difference_pct
    way = "more" if found.mean_difference.value >= 0 else "less"
    seen = (
        f"{pair.first} reads {number_text(abs(found.mean_difference.value), 1)} W {way} on average, "
        f"{percent_text(pct.value, signed=True)} of {_denominator(pair)} "
        f"(between {percent_text(pct.low, signed=True)} and {percent_text(pct.high, signed=True)})"
    )
    lower, upper = found.limits.lower.value, found.limits.upper.value
    single = (
        f"Of single seconds 19 in 20 differ by between {watts_text(lower, signed=True)} and "
        f"{watts_text(upper, signed=True)}."
    )
    return f"{verdict.says}. {seen}; {_why(pair, verdict)}. {single} {EACH_WAY}"


def _why(pair: PairReport, verdict: Verdict) -> str:
    reach = _of(verdict, "both tolerances together")
    if reach is None:
        return "no tolerance is stated for one of them, so nothing says how much may be"
    allowed = f"the ±{percent_text(reach.value)} that both tolerances allow together"
    if verdict.says == "depends on power":
        low, high = _of(verdict, "low power"), _of(verdict, "high power")
        at_low, at_high = (_of(verdict, f"difference at {end} power") for end in ("low", "high"))
        if low and high and at_low and at_high:
            return (
                f"but {percent_text(at_low.value, signed=True)} at {watts_text(low.value)} and "
                f"{percent_text(at_high.value, signed=True)} at {watts_text(high.value)}, beyond {allowed}: "
                "the average hides it"
            )
    where = {"agree": "within", "differ": "outside", "cannot tell": "on both sides of the edge of"}
    said = f"that is {where.get(verdict.says, 'near')} {allowed}"
    if pair.chain:
        said += "; a chain stands between them, so a difference is expected"
    return said


def _quality(verdict: Verdict) -> str:
    numbers = {number.name: number for number in verdict.numbers}
    said: str = verdict.says
    if numbers:
        compared, lost = numbers["compared"].value, numbers["not compared"].value
        said += (
            f". {number_text(compared)} seconds are compared, worth "
            f"{number_text(numbers['effective readings'].value)} independent readings; {percent_text(lost)} "
            "of what was recorded is not"
        )
    noted = [why.removeprefix("not noted: ") for why in verdict.because if why.startswith("not noted: ")]
    others = [why for why in verdict.because if not why.startswith("not noted: ")]
    if others:
        said += f". Because {listed(others)}"
    if len(noted) > MOST_NAMED:
        said += f". Not noted: {len(noted)} things about these two, named below"
    elif noted:
        said += f". Not noted: {listed(noted)}"
    return f"{said}."


def _plausibility(pair: PairReport, verdict: Verdict) -> str:
    loss = pair.loss
    if loss is None:
        return f"{verdict.says}. No loss is judged: {pair.loss_because}."
    return _loss(verdict, loss)


def _loss(verdict: Verdict, loss: LossVerdict) -> str:
    said = (
        f"{verdict.says}. Behind the chain {percent_text(loss.seen.value)} less arrives (between "
        f"{percent_text(loss.seen.low)} and {percent_text(loss.seen.high)}, tolerances included) where "
        f"{percent_text(loss.expected.value)} is expected (between {percent_text(loss.expected.low)} and "
        f"{percent_text(loss.expected.high)}): the two {'fit' if abs(loss.e_n) <= 1 else 'do not fit'}, "
        f"E_n {number_text(loss.e_n, 2)}, "
        f"{'within' if abs(loss.e_n) <= 1 else 'outside'} -1 to 1"
    )
    if not loss.could_tell_no_loss:
        said += ", but with these tolerances no loss at all would have passed too"
    if loss.equal_averages:
        said += ". Equal averages with a chain between them are a finding, not a proof"
    return f"{said}."


def _denominator(pair: PairReport) -> str:
    return "the mean of both" if pair.percent_of == "mean of both" else pair.percent_of


def _of(verdict: Verdict, name: str) -> Number | None:
    return next((number for number in verdict.numbers if number.name == name), None)
