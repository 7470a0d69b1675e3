"""The rules, in the order in which they run. Adding a rule is a file beside this one and two lines here."""

from collections.abc import Callable, Iterable

from spindlewise.catalog.catalog import Catalog
from spindlewise.catalog.checks import (
    bench_file,
    curve_direction,
    curve_unit,
    detail_steps,
    family_maker,
    file_name,
    implausible_figure,
    link_twice,
    maker_spelling,
    missing_rate,
    notice_end,
    odd_date,
    one_sided_power,
    plain_pedal_figures,
    platform_cleat,
    price_jump,
    promised_firmware,
    region_tax,
    same_name,
    side_price_digits,
    stack_basis,
    status_order,
    successor,
    unknown_product,
    unknown_region,
    untested_measured,
    weight_basis,
)
from spindlewise.problems import Problem

Check = Callable[[Catalog], Iterable[Problem]]

CHECKS: tuple[Check, ...] = (
    bench_file.check,
    curve_direction.check,
    curve_unit.check,
    detail_steps.check,
    family_maker.check,
    file_name.check,
    implausible_figure.check,
    link_twice.check,
    maker_spelling.check,
    missing_rate.check,
    notice_end.check,
    odd_date.check,
    one_sided_power.check,
    plain_pedal_figures.check,
    platform_cleat.check,
    price_jump.check,
    promised_firmware.check,
    region_tax.check,
    same_name.check,
    side_price_digits.check,
    stack_basis.check,
    status_order.check,
    successor.check,
    unknown_product.check,
    unknown_region.check,
    untested_measured.check,
    weight_basis.check,
)
"""Each takes a whole catalog and yields what it finds; none of them reads a file."""

WARNINGS_ALONE: frozenset[Check] = frozenset({price_jump.check})
"""Of these a question that nobody reads warnings of may be spared: of a long log they say very much."""
