"""What every page carries: the catalog's name and day, the invented notice, the way to the other pages."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from spindlewise.answer.desk import Desk
from spindlewise.buyer.buyer import Buyer
from spindlewise.site.addresses import region_page


@dataclass(frozen=True, slots=True)
class Frame:
    """The same on all pages; `section` of a page tells which entry of the navigation is the present one."""

    title: str
    invented: str
    """Empty for a real catalog."""
    day: date
    regions: tuple[tuple[str, str, str], ...]
    """Code, name and page of each region, in the catalog's order."""
    buyers: tuple[tuple[str, str, str], ...]
    """Id, name and question of each buyer."""
    products: Mapping[str, str]
    """Maker and name by id, for links."""


def frame_of(desk: Desk, buyers: Mapping[str, Buyer]) -> Frame:
    """The frame of a publish."""
    settings = desk.catalog.settings
    first = next(iter(settings.regions))
    return Frame(
        title=settings.title,
        invented="" if settings.invented == "no" else settings.invented,
        day=desk.day,
        regions=tuple(
            (code, facts.name, region_page(code, first)) for code, facts in settings.regions.items()
        ),
        buyers=tuple((name, buyer.name, buyer.question) for name, buyer in sorted(buyers.items())),
        products={name: f"{product.maker} {product.name}" for name, product in desk.catalog.products.items()},
    )
