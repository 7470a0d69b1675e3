"""What owning the pick and those that follow costs over the buyer's years, in sentences."""

from spindlewise.answer.owning import Owned
from spindlewise.answer.reply import Reply
from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.product import Battery, Product
from spindlewise.render.blocks import Block, Bullets, Heading, Paragraph
from spindlewise.render.naming import listed, naming
from spindlewise.units import money_text

CHARGING = "What charging takes from the mains is next to nothing and is not counted."


def owning_blocks(catalog: Catalog, reply: Reply) -> tuple[Block, ...]:
    """An account for each product; nothing where the buyer says nothing of years and hours."""
    if not reply.owned:
        return ()
    names, buyer = naming(catalog), reply.ranking.buyer
    first = reply.owned[0][1]
    over = f"Over {first.years.normalize():f} years at {first.hours_per_year.normalize():f} hours a year"
    stood_in = [
        what
        for what, stated in (("years", buyer.riding.years), ("hours", buyer.riding.hours_per_year))
        if isinstance(stated, str)
    ]
    assumed = f" (the {stood_in[0]} are assumed, since none are stated)" if stood_in else ""
    weighed = (
        "It is weighed in place of the bare price."
        if "ownership" in reply.ranking.table.criteria
        else "It can be weighed in place of the price, never beside it."
    )
    items = tuple(owned_words(names.product(name), owned, buyer.currency) for name, owned in reply.owned)
    charged = any(_is_charged(catalog.products[name]) for name, _ in reply.owned)
    return (
        Heading("What owning it costs"),
        Paragraph(f"{over}{assumed}, nothing counted for what it fetches afterwards. {weighed}"),
        Bullets(items),
        *((Paragraph(CHARGING, "quiet"),) if charged else ()),
    )


def owned_words(name: str, owned: Owned, currency: str) -> str:
    """The total, by year and by hour, what it is made of, and which parts nobody knows."""
    account = owned.account
    least = "" if account.complete else "at least "
    by = f"{money_text(account.per_year, currency)} a year"
    if account.per_hour is not None:
        by += f", {money_text(account.per_hour, currency)} an hour"
    bought = [line for line in account.lines if int(line.times)]
    parts = [_line(line.name, int(line.times), money_text(line.price, currency)) for line in bought]
    said = f"{name}: {least}{money_text(account.known_total, currency)} ({by}): {listed(parts)}."
    idle = [line.name for line in account.lines if not int(line.times)]
    if idle:
        said += f" Not due in that time: {listed(idle)}."
    if account.unknown:
        said += f" Not known, and not counted: {listed(account.unknown)}."
    return said


def _is_charged(product: Product) -> bool:
    return isinstance(product.battery, Battery) and product.battery.type == "built-in"


def _line(name: str, times: int, price: str) -> str:
    if name == "purchase":
        return f"purchase {price}"
    return f"{name} {'once' if times == 1 else f'{times} times'} {price}"
