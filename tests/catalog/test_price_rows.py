from hypothesis import given
from hypothesis import strategies as st

import worlds
from spindlewise.catalog.price_rows import PriceRows, rows_of, rows_of_all

NAMES = ("heron", "siskin", "wren")
LOGS = st.lists(st.sampled_from(NAMES), max_size=12).map(
    lambda names: [worlds.price(name, 400 + n, line=n + 2) for n, name in enumerate(names)]
)


@given(LOGS, st.sets(st.sampled_from((*NAMES, "dunlin"))))
def test_rows_sorted_out_are_those_that_looking_through_all_would_find(rows, wanted) -> None:
    kept = PriceRows(rows)
    assert kept == tuple(rows)
    for name in (*NAMES, "dunlin"):
        assert (
            list(rows_of(kept, name)) == list(rows_of(rows, name)) == [r for r in rows if r.product == name]
        )
    assert rows_of_all(kept, wanted) == rows_of_all(rows, wanted)
    assert rows_of_all(kept, wanted) == tuple(r for r in rows if r.product in wanted)


def test_they_are_sorted_out_once() -> None:
    rows = PriceRows([worlds.price("heron", 400)])
    assert rows.by_product is rows.by_product
