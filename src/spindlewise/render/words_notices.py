"""Safety notices in words: the same sentence wherever one is told."""

from collections.abc import Iterable
from datetime import date

from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import SafetyNotice
from spindlewise.render.blocks import Paragraph
from spindlewise.render.naming import Naming, sentence


def notice_words(product: str, notice: SafetyNotice) -> str:
    """A safety notice: what is wrong and what whoever rides it should do."""
    return (
        f"{product}: {sentence(notice.what)} {sentence(notice.action)} "
        f"(Issued {notice.date.isoformat()} by {notice.issued_by}.)"
    )


def standing_on(catalog: Catalog, products: Iterable[str], day: date) -> tuple[tuple[str, SafetyNotice], ...]:
    """The notices that stand on these products on the day; a product that has left the catalog has none."""
    known = catalog.products
    return tuple(
        (name, notice) for name in products if name in known for notice in standing_notices(known[name], day)
    )


def notice_blocks(
    catalog: Catalog, products: Iterable[str], day: date, names: Naming
) -> tuple[Paragraph, ...]:
    """A caution for each notice that stands on one of these products."""
    return tuple(
        Paragraph(notice_words(names.product(name), notice), "caution")
        for name, notice in standing_on(catalog, products, day)
    )
