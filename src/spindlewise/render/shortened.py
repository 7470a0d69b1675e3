"""Shortens a reply to a number of bytes by leaving out whole sections; what must be said is never cut."""

from collections.abc import Callable, Iterable, Sequence

from spindlewise.render.blocks import Block, Paragraph, Section, blocks_of

LEAVE_OUT_FIRST = (
    "grades",
    "weigh",
    "figures",
    "owning",
    "question_itself",
    "what_would_change",
    "cost_per_gram",
    "how_sure",
    "near_misses",
    "unknowns",
    "why",
    "swap",
    "reading",
)
"""The order in which sections give way; pick, notices, disclosure and cautions never do."""

SHORTENED = Paragraph("Shortened to fit; the whole answer says more.", "quiet")


class TooShort(ValueError):  # noqa: N818  # the message is a fact about the limit
    """Not even what must be said fits; `needed` bytes would do."""

    def __init__(self, limit: int, needed: int) -> None:
        """`limit` was asked for."""
        super().__init__(f"{limit} bytes are too few: what must be said takes {needed}")
        self.needed = needed


def shortened(sections: Sequence[Section], say: Callable[[Iterable[Block]], str], limit: int) -> str:
    """The reply in at most `limit` bytes of UTF-8, said to be shortened where anything is left out.

    Raises TooShort.
    """
    text = say(blocks_of(sections))
    if len(text.encode()) <= limit:
        return text
    kept = list(sections)
    for name in LEAVE_OUT_FIRST:
        kept = [section for section in kept if section.keep or section.name != name]
        text = say((*blocks_of(kept), SHORTENED))
        if len(text.encode()) <= limit:
            return text
    raise TooShort(limit, len(text.encode()))
