"""The brief answer as plain text for a message: short lines, nothing that must be said left out."""

from spindlewise.answer.brief import Brief
from spindlewise.answer.level_reasons import level_reasons
from spindlewise.catalog.catalog import Catalog
from spindlewise.fit.saddle import SaddleChange
from spindlewise.render.moved import moved
from spindlewise.render.naming import Naming
from spindlewise.render.words_figures import paid_words
from spindlewise.render.words_outlook import near_miss_words
from spindlewise.render.words_rank import frame_words
from spindlewise.render.words_reply import disclosure_words, notice_words
from spindlewise.render.words_why import difference_words, level_sentences, score_words
from spindlewise.units import grams_text, points_text


def brief_text(catalog: Catalog, found: Brief, names: Naming) -> str:
    """The whole brief answer, with one line feed at the end."""
    buyer = found.ranking.buyer
    lines = [buyer.question, "", *_pick_lines(found, names)]
    if found.near_miss is not None:
        lines.append(f"Nearly: {near_miss_words(found.near_miss, names, found.pick is not None)}")
    lines += [f"Safety notice. {notice_words(names.product(name), notice)}" for name, notice in found.notices]
    lines += _bike_lines(found)
    if found.pick is not None and found.disclosure is not None:
        lines.append(f"Disclosure: {disclosure_words(names.product(found.pick.product), found.disclosure)}")
    lines.append(frame_words(buyer, found.ranking))
    if catalog.settings.invented != "no":
        lines.append(catalog.settings.invented)
    return "\n".join(lines) + "\n"


def _pick_lines(found: Brief, names: Naming) -> list[str]:
    pick = found.pick
    if pick is None:
        held = "all that no need keeps out is held back by a safety notice"
        why = held if len(found.ranking.order) else "nothing in the catalog meets all the needs"
        return [f"No recommendation: {why}."]
    lines = [f"Our pick: {names.product(pick.product)} at {paid_words(pick.paid)}."]
    lines += level_sentences(level_reasons(found.ranking, pick), names, explained=False)
    lines.append(f"Score: {score_words(pick)}.")
    if found.next is not None and found.against_pick is not None:
        why = difference_words(found.against_pick, names)
        points = points_text(found.next.score.expected)
        lines.append(f"Next: {names.product(found.next.product)} ({points}): {why} against the pick.")
    reception = pick.received.reception
    over = f" over {reception.protocol}" if reception.protocol else ""
    lines.append(f"You will see: {reception.mode}{over}; balance {reception.balance}.")
    unknown = [
        names.criterion(name)
        for name, standing in pick.standings.items()
        if name in pick.merits and standing.origin == "unknown"
    ]
    if unknown or pick.unchecked:
        lines.append(f"Not known of it: {'; '.join([*unknown, *pick.unchecked])}.")
    return lines


def _bike_lines(found: Brief) -> list[str]:
    if found.swap is None:
        return []
    saddle = found.swap.saddle
    change = moved(saddle.change_mm) if isinstance(saddle, SaddleChange) else "the change cannot be said"
    lines = [
        f"Saddle: {change} (by common practice; it restores the distance that you had, it is not a fit). "
        "Small steps; a qualified fitter sees more, and pain belongs to a medical practitioner."
    ]
    if found.swap.weight is not None:
        grams = found.swap.weight.expected_g
        lines.append(f"Weight: {grams_text(abs(grams))} {'heavier' if grams > 0 else 'lighter'}.")
    lines.append("The left pedal has a left-hand thread. Torque and rider limits are the maker's.")
    return lines
