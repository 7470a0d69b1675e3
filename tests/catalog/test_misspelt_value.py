import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spindlewise.catalog.misspelt_value import day_tip, number_tip


@pytest.mark.parametrize(
    ("text", "tip"),
    [
        ("53", "take the quotes away: 53"),
        ("53.20", "take the quotes away: 53.20"),
        ("899,00", "write 899.00"),
        ("1.299,00", "write 1299.00"),
        ("1,299.00", "write 1299.00"),
        ("1 299", "write 1299"),
        ("1'299.50", "write 1299.50"),
        ("1,299,000", "write 1299000"),
        ("1,299", "write 1299 for thousands or 1.299 for a decimal"),
        ("1,299 g", "write 1299 for thousands or 1.299 for a decimal: the unit stands in the key"),
        ("1,299,000.5 W", "write 1299000.5: the unit stands in the key"),
        ("007 ± 01", "write 7, and 1 under the key for the plus-minus"),
        ("12 g", "write 12: the unit stands in the key"),
        ("12g", "write 12: the unit stands in the key"),
        ("0.2 in", "write it converted to the unit in the key"),
        ("12 oz", "write it converted to the unit in the key"),
        ("24 Months", "write it converted to the unit in the key"),
        ("5,5 mm", "write 5.5: the unit stands in the key"),
        ("1.5 %", "write 1.5: the unit stands in the key"),
        ("34 N m", "write 34: the unit stands in the key"),
        ("899 EUR", "write 899: the currency stands in a key of its own"),
        ("€ 899,00", "write 899.00: the currency stands in a key of its own"),
        ("£1,299.00", "write 1299.00: the currency stands in a key of its own"),
        ("−5", "write -5"),
        ("+5", "write 5"),
        ("007", "write 7"),
        ("310 ± 2", "write 310, and 2 under the key for the plus-minus"),
        ("310.5 +/- 0.5 g", "write 310.5, and 0.5 under the key for the plus-minus"),
        ("53-55", "write the middle of the range, and half its width under the key for the plus-minus"),
        ("about 310", "write 310: how sure it is stands in a key of its own"),
        ("~53 g", "write 53: how sure it is stands in a key of its own"),
        ("~1,5", "write 1.5: how sure it is stands in a key of its own"),
        ("heavy", ""),
        ("", ""),
        ("1.2.3", ""),
        ("1.2.3 g", ""),
        ("1.2.3 EUR", ""),
        ("12/13", ""),
    ],
)
def test_what_to_write_where_a_number_is_wanted(text: str, tip: str) -> None:
    assert number_tip(text) == tip


@pytest.mark.parametrize(
    ("text", "tip"),
    [
        ("2024-03-01", "take the quotes away: 2024-03-01"),
        ("2024-3-1", "write 2024-03-01"),
        ("2024/03/01", "write 2024-03-01"),
        ("2024.03.01", "write 2024-03-01"),
        ("2024-02-30", "no such day is in the calendar"),
        ("1.3.2024", "write it as YYYY-MM-DD"),
        ("03/01/2024", "write it as YYYY-MM-DD"),
        ("soon", ""),
    ],
)
def test_what_to_write_where_a_day_is_wanted(text: str, tip: str) -> None:
    assert day_tip(text) == tip


@given(st.text(alphabet="0123456789.,'-+−±~ €gEURto<>", max_size=20))
@settings(deadline=None, max_examples=300)
def test_every_number_that_is_advised_can_be_written(text: str) -> None:
    advised = re.match(r"(?:write|take the quotes away:) ([-0-9.]+)", number_tip(text))
    if advised:
        assert re.fullmatch(r"-?(0|[1-9][0-9]*)(\.[0-9]+)?", advised[1])


@given(st.text(max_size=200))
@settings(deadline=None)
def test_any_text_is_taken(text: str) -> None:
    assert len(number_tip(text)) < 200
    assert len(day_tip(text)) < 200
