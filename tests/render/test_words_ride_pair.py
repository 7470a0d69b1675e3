"""Two meters in figures: whose reading is the denominator stands in the heading."""

from dataclasses import replace

from small_rides import demo, report
from spindlewise.bench.synthetic_ride import Meter, Stretch
from spindlewise.render.as_text import as_text
from spindlewise.render.blocks import Heading, Table
from spindlewise.render.words_ride_pair import pair_blocks

PAIR = next(pair for pair in demo().pairs if (pair.first, pair.second) == ("pedals", "spider"))


def text(pair) -> str:
    return " ".join(as_text(pair_blocks(pair), 200).split())


def test_the_heading_names_the_order_and_the_denominator() -> None:
    assert pair_blocks(PAIR)[0] == Heading("pedals less spider, in percent of spider")


def test_all_seconds_and_pedalling_are_two_rows() -> None:
    tables = [block for block in pair_blocks(PAIR) if isinstance(block, Table)]
    assert [table.caption.split(" (")[0] for table in tables] == [
        "Averages",
        "By power",
        "By cadence, pedalling",
        "Best averages",
    ]
    assert [row[0].split(",")[0] for row in tables[0].rows] == ["all", "pedalling"]
    assert tables[1].rows[0][0] == "100 to 150 W"


def test_line_concordance_ratio_and_cadence_are_said() -> None:
    told = text(PAIR)
    for words in (
        "(Deming): spider = 1.001",
        "Concordance (Lin): 0.998",
        "Ratio of single seconds: 1.00",
        "rpm on average",
    ):
        assert words in told, words
    assert "is not seen to change with power" in told


def test_a_difference_that_changes_with_power_says_so() -> None:
    plan = [Stretch(300, 120), Stretch(300, 300)] * 2
    (pair,) = report(Meter("pedals", scale=0.9, offset_w=21.0), Meter("spider"), plan=plan).pairs
    assert "The difference in percent changes with power: +" in text(pair)


def test_what_there_is_not_is_left_out() -> None:
    bare = replace(
        PAIR,
        by_power=(replace(PAIR.by_power[0], mean_difference=None),),
        by_cadence=(),
        best=(),
        deming=replace(PAIR.deming, scale_interval=None, offset=-1.0),
        concordance=None,
        cadence=None,
        power=replace(PAIR.power, without_zeros=None),
    )
    told = text(bare)
    assert "Cadence, apart from power: not recorded by both." in told
    assert "= 1.001 times pedals less 1.0 W" in told
    assert "pedalling, 2" not in told
    no_line = replace(bare, deming=None)
    assert "Deming" not in text(no_line)


def test_of_too_few_seconds_there_are_no_figures() -> None:
    (pair,) = report(Meter("pedals"), Meter("spider"), plan=[Stretch(15, 200)]).pairs
    assert pair_blocks(pair) == []
