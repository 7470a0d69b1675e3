import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.render.as_csv import as_csv, formula_safe


@pytest.mark.parametrize("cell", ["=1+1", "+1 g", "-x", "@cmd", "\tx", "--1", "+-1"])
def test_no_cell_is_run_as_a_formula(cell: str) -> None:
    assert not formula_safe(cell).startswith(("=", "+", "-", "@", "\t"))


@pytest.mark.parametrize("cell", ["-86", "+2.5", "404", "0.0", "", "x=1"])
def test_numbers_and_plain_words_stay(cell: str) -> None:
    assert formula_safe(cell) == cell


def test_lines_end_as_rfc_4180_has_it_and_commas_are_quoted() -> None:
    assert as_csv(["a", "b"], [["1,5", 'say "x"']]) == 'a,b\r\n"1,5","say ""x"""\r\n'


def test_a_row_of_another_length_is_a_bad_call() -> None:
    with pytest.raises(ValueError, match="a row of 1 fields"):
        as_csv(["a", "b"], [["1"]])


@settings(deadline=None)
@given(st.lists(st.tuples(st.text(), st.text()), max_size=5))
def test_every_row_comes_back_as_one_row(rows: list[tuple[str, str]]) -> None:
    back = list(csv.reader(io.StringIO(as_csv(["a", "b"], rows), newline=""), strict=True))
    assert len(back) == len(rows) + 1
    assert all(len(row) == 2 for row in back)
