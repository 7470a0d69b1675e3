import pytest
from pydantic import ValidationError

from spindlewise.bench.csv_columns import BalanceColumn, CsvColumns, TimeColumn

TIME = TimeColumn(column="t", written_as="seconds")


def test_the_described_columns_by_what_they_hold():
    columns = CsvColumns(
        time=TIME, power="w", cadence="rpm", balance=BalanceColumn(column=4, written_as="left percent")
    )
    assert columns.named() == {"time": "t", "power": "w", "balance": 4, "cadence": "rpm"}
    assert columns.mark == ","
    assert CsvColumns(time=TIME, power="w", delimiter="tab").mark == "\t"


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, "names no column of power"),
        ({"left_power": "l"}, "has one side only"),
        ({"power": "w", "double_one_side": True}, "where there is more"),
        ({"left_power": "l", "right_power": "r", "double_one_side": True}, "where there is more"),
        ({"power": "w", "decimal": ","}, "the comma as decimal mark and as delimiter"),
        ({"power": "w", "header": False}, "has no header"),
        ({"power": 0}, "greater than or equal to 1"),
        ({"power": "w", "colour": "red"}, "Extra inputs"),
    ],
)
def test_a_description_that_does_not_add_up_is_refused(given, told):
    with pytest.raises(ValidationError, match=told):
        CsvColumns(time=TIME, **given)


def test_one_side_may_be_doubled_if_it_is_said():
    assert CsvColumns(time=TIME, right_power="r", double_one_side=True).double_one_side
