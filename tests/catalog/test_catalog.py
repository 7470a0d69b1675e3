from dataclasses import FrozenInstanceError

import pytest

from worlds import catalog, plain, price, product


def test_products_stand_in_order_of_id_and_nothing_changes_afterwards() -> None:
    known = catalog([product("skerry-duo"), plain("moor-flat")], [price("skerry-duo", 500)])
    assert list(known.products) == ["moor-flat", "skerry-duo"]
    assert (known.bench_files, known.unread) == (frozenset(), frozenset())
    with pytest.raises(FrozenInstanceError):
        known.prices = ()  # type: ignore[misc]
