"""Answers from the small catalog in tests/data, worked out once for all tests of render."""

from functools import cache

from command_line import SMALL
from spindlewise.answer.asking import open_buyers
from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import Reply, reply_to
from spindlewise.buyer.buyer import Buyer
from spindlewise.catalog.opening import open_catalog
from spindlewise.render.naming import Naming, naming


@cache
def desk() -> Desk:
    """The small catalog on its own day."""
    catalog, problems = open_catalog(SMALL)
    assert catalog is not None, problems
    return Desk(catalog)


@cache
def buyer(name: str) -> Buyer:
    """One of its buyers."""
    found, problems = open_buyers(SMALL / "buyers", desk().catalog)
    assert not problems
    return found[name]


@cache
def reply(name: str = "club-racer") -> Reply:
    """The reply to one of its buyers."""
    return reply_to(desk(), buyer(name))


def names() -> Naming:
    """What its products and criteria are called."""
    return naming(desk().catalog)
