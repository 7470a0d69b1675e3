"""maker-spelling: a maker is spelled the same in all files, else its products stand apart.

PASS: `maker: Holmvik Works` in every file
FAIL: `maker: Holmvik Works` in one file, `maker: Holmvik-works` in another
"""

from collections import Counter
from collections.abc import Iterator

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.finding import at_value
from spindlewise.problems import Problem, quoted


def check(catalog: Catalog) -> Iterator[Problem]:
    """Each maker that is another maker's name but for capitals, spaces and marks; the rarer one is told."""
    counted = Counter(product.maker for product in catalog.products.values())
    usual: dict[str, str] = {}
    for maker, _ in sorted(counted.items(), key=lambda item: (-item[1], item[0])):
        usual.setdefault(_bare(maker), maker)
    for product in catalog.products.values():
        spelled = usual[_bare(product.maker)]
        if product.maker != spelled:
            told = f"is {quoted(product.maker)}, elsewhere {quoted(spelled)}"
            yield at_value(
                catalog, product.id, ("maker",), "maker-spelling", told, f"write {spelled} in all files"
            )


def _bare(maker: str) -> str:
    return "".join(c for c in maker.casefold() if c.isalnum()) or maker
