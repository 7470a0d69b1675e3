"""The front page's weighting: nobody's in particular, the one that stands in where nobody states weights."""

from spindlewise.answer.asking import Asked, ask
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.catalog import Catalog


def usual_buyer(catalog: Catalog, region: str) -> Buyer:
    """A buyer of the region who needs nothing but a power pedal and states no weights, receiver or bike."""
    return ask(catalog, Asked(region=region))
