"""The pre-test sheet as YAML: a whole ride.yaml with every unknown to be replaced before the ride."""

from spindlewise.answer.bench_sheet import PreTest
from spindlewise.catalog.figure import Known
from spindlewise.render.naming import listed
from spindlewise.render.yaml_snippet import figure, scalar

HEAD = """\
# Before the ride: replace each unknown by what you read off. What stays unknown is named in the report.
# After it: put the recordings beside this file, name them below, run spindlewise bench ride on the folder.
"""
COLUMNS = """\
      # How the file is written. Times: seconds | milliseconds | elapsed | time of day | ISO timestamps |
      # Unix seconds. There may also be: balance, altitude, lap, left_power, right_power, delimiter, decimal,
      # skip_lines.
      columns:
        time: {column: seconds, written_as: seconds}
        power: power_w
        cadence: cadence_rpm
"""


def sheet_yaml(sheet: PreTest) -> str:
    """The sheet; it is read without an error as it stands, and lacks what nobody has noted yet."""
    product = sheet.product
    ids = meter_ids(sheet)
    day = sheet.day.isoformat()
    lines = [
        "schema: spindlewise ride 1",
        f"id: {f'{day}-{product.id}'[:60].rstrip('-')}",
        f"title: {scalar(f'{product.maker} {product.name} beside {listed(sheet.beside)}')}",
        "# The day of the ride.",
        f"date: {day}",
        "rider: the bench",
        "# measured; generated is for recordings that a program has drawn.",
        "made: measured",
        "note: nothing yet",
        "# counts | bedding-in | void; the last two with a reason in because.",
        "standing:",
        "  state: counts",
        "  because: not applicable",
        "temperature_start_c: unknown",
        "temperature_end_c: unknown",
        "# The cranks on the bike.",
        "crank_mm: unknown",
        "# In percent of whose reading differences are told; that makes it no truer than the others.",
        f"percent_of: {ids[1]}",
        "lag_within_s: 120",
        "meters:",
        *_own_meter(sheet, ids[0]),
    ]
    for name, kind in zip(ids[1:], sheet.beside, strict=True):
        lines += _other_meter(name, kind)
    return HEAD + "".join(line if line.endswith("\n") else f"{line}\n" for line in lines)


def meter_ids(sheet: PreTest) -> tuple[str, ...]:
    """An id for each meter of the sheet, its own first; a kind that stands there already gets a number."""
    ids = ["pedals"]
    for kind in sheet.beside:
        count = 2
        name: str = kind
        while name in ids:
            name, count = f"{kind}-{count}", count + 1
        ids.append(name)
    return tuple(ids)


def _own_meter(sheet: PreTest, name: str) -> list[str]:
    right = "not applicable" if sheet.side == "left doubled" else "unknown"
    left = "not applicable" if sheet.side == "right doubled" else "unknown"
    torque = (
        f"    # The maker says {figure(sheet.torque.value)} N m ({sheet.torque.source}). Write what you used."
        if isinstance(sheet.torque, Known)
        else "    # The maker's torque is not known: ask the maker."
    )
    tolerance = figure(sheet.tolerance.value) if isinstance(sheet.tolerance, Known) else "unknown"
    after = sheet.after_fitting not in ("unknown", "none", "not applicable")
    return [
        f"  - id: {name}",
        "    what: pedals",
        f"    product: {sheet.product.id}",
        f"    side: {sheet.side}",
        "    # Which unit: a serial number, or whose it is.",
        "    unit: unknown",
        "    ridden_km: unknown",
        *([f"    # The newest in the catalog is {sheet.firmware}."] if sheet.firmware else []),
        "    firmware: unknown",
        "    battery: unknown",
        *([f"    # The maker asks for: {sheet.after_fitting}."] if after else []),
        "    # done: before the start | not done. Each side's offset as the meter shows it.",
        f"    zero_offset: {{done: unknown, left: {left}, right: {right}}}",
        "    # As set in the meter or the head unit.",
        "    crank_set_mm: unknown",
        torque,
        "    fitted_nm: unknown",
        f"    tolerance_pct: {tolerance}",
        *_recording(name),
    ]


def _other_meter(name: str, kind: str) -> list[str]:
    on_the_crank = kind in ("pedals", "crank")
    return [
        f"  - id: {name}",
        f"    what: {kind}",
        "    # The product's id in the catalog, or not applicable.",
        "    product: not applicable",
        "    side: both",
        "    unit: unknown",
        "    ridden_km: unknown",
        "    firmware: unknown",
        "    battery: unknown",
        "    zero_offset: {done: unknown, left: not applicable, right: not applicable}",
        f"    crank_set_mm: {'unknown' if on_the_crank else 'not applicable'}",
        f"    fitted_nm: {'unknown' if on_the_crank else 'not applicable'}",
        "    tolerance_pct: unknown",
        *_recording(name),
    ]


def _recording(name: str) -> list[str]:
    return [
        "    recorder: unknown",
        "    recording:",
        "      # CSV with columns as below, or FIT without them.",
        "      format: CSV",
        f"      file: {name}.csv",
        "      # Of the file's bytes; the report of the ride says it.",
        "      sha256: unknown",
        COLUMNS,
    ]
