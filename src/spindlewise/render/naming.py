"""What products and criteria are called in front of a reader: by name, not by id."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from spindlewise.catalog.catalog import Catalog
from spindlewise.units import percent_text


@dataclass(frozen=True, slots=True)
class Naming:
    """Full product names by id, and titles and units of criteria by name."""

    products: Mapping[str, str]
    titles: Mapping[str, str]

    def product(self, product: str) -> str:
        """Maker and name; a product that is not in the catalog keeps its id.

        >>> Naming({"heron-one": "Shore Works Heron One"}, {}).product("heron-one")
        'Shore Works Heron One'
        """
        return self.products.get(product, product)

    def criterion(self, name: str) -> str:
        """The criterion's title as it reads within a sentence.

        >>> Naming({}, {"price": "Price"}).criterion("price")
        'price'
        """
        title = self.titles.get(name, name.replace("_", " "))
        return title[:1].lower() + title[1:]

    def title(self, name: str) -> str:
        """The criterion's title as it heads a column."""
        return self.titles.get(name, name.replace("_", " "))


def naming(catalog: Catalog) -> Naming:
    """The names that this catalog gives."""
    curves = catalog.criteria.criteria
    return Naming(
        {name: f"{product.maker} {product.name}" for name, product in catalog.products.items()},
        {name: getattr(curves, name).title for name in type(curves).model_fields},
    )


def listed(items: Iterable[str], last: str = "and") -> str:
    """The items as a list in a sentence.

    >>> listed(["price", "weight", "warranty"]), listed(["price"])
    ('price, weight and warranty', 'price')
    """
    words = list(items)
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def listed_most(items: Iterable[str], at_most: int = 5) -> str:
    """The first of the items as a list in a sentence, and how many more there are.

    One more than `at_most` is named and not counted, since "and 1 more" is no shorter.

    >>> listed_most(["a", "b", "c", "d"], 2), listed_most(["a", "b", "c"], 2)
    ('a, b and 2 more', 'a, b and c')
    """
    words = list(items)
    if len(words) <= at_most + 1:
        return listed(words)
    return listed([*words[:at_most], f"{len(words) - at_most} more"])


def share_text(share: float) -> str:
    """A share of the whole in percent.

    >>> share_text(0.125)
    '12.5 %'
    """
    return percent_text(share * 100)


def sentence(text: str) -> str:
    """The text with a capital at its beginning and one full stop at its end.

    >>> sentence("weigh it")
    'Weigh it.'
    """
    return f"{text[:1].upper()}{text[1:].rstrip('.')}." if text else ""
