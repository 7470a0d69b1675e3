"""Pairs worth a page: each buyer's pick beside what comes next. Any other two: in the browser."""

from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import Reply
from spindlewise.answer.versus import versus
from spindlewise.render.blocks import Section
from spindlewise.render.naming import naming
from spindlewise.render.words_rank import notice_of_invention
from spindlewise.render.words_versus import verdict_words, versus_blocks


@dataclass(frozen=True, slots=True)
class Pair:
    """Two products for one buyer; `words` is the comparison as `versus` of the command line gives it."""

    buyer: str
    buyer_name: str
    first: str
    second: str
    verdict: str
    words: Section


def pair_of(desk: Desk, name: str, reply: Reply) -> Pair | None:
    """The pair of a buyer by id; a buyer without a pick, or with nothing behind it, has none."""
    if reply.pick is None or not reply.followers:
        return None
    first, second = reply.pick.product, reply.followers[0].placed.product
    found = versus(desk, reply.ranking.buyer, first, second)
    names = naming(desk.catalog)
    blocks = versus_blocks(desk.catalog, found)
    told = notice_of_invention(desk.catalog)  # the page's own frame says so already
    return Pair(
        buyer=name,
        buyer_name=reply.ranking.buyer.name,
        first=first,
        second=second,
        verdict=verdict_words(found, names),
        words=Section("pair", blocks[: len(blocks) - len(told)]),
    )
