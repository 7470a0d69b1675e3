"""Figures that are missing for an answer on the bike, each named once."""

from spindlewise.fit.missing import MissingFigures
from spindlewise.render.naming import Naming


def missing_words(found: MissingFigures, names: Naming) -> str:
    """Each figure that is missing, of which product, and why it is needed."""
    said = (
        f"Not known: the {lack.figure} of {names.product(lack.product)} ({lack.because})."
        for lack in found.missing
    )
    return " ".join(dict.fromkeys(said))
