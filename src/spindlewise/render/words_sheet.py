"""The pre-test sheet as a page to print: a box to fill for all that the report would miss."""

from spindlewise.answer.bench_sheet import PreTest
from spindlewise.catalog.figure import Known
from spindlewise.render.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from spindlewise.render.naming import listed
from spindlewise.render.yaml_sheet import meter_ids
from spindlewise.units import figure_text, percent_text

BLANK = "____________"


def sheet_blocks(sheet: PreTest) -> tuple[Block, ...]:
    """The ride, then each meter with a blank for everything to be noted, then what to do when."""
    name = f"{sheet.product.maker} {sheet.product.name}"
    ids = meter_ids(sheet)
    return (
        Heading(f"Before the ride: {name}", 1),
        Paragraph(f"Beside it: {listed(sheet.beside)}. The reference is the {ids[1]}."),
        Table(
            "The ride",
            (Column("What"), Column("Noted")),
            tuple(
                (what, BLANK)
                for what in (
                    "Day and rider",
                    "Temperature at the start, °C",
                    "Temperature at the end, °C",
                    "Cranks on the bike, mm",
                )
            ),
        ),
        Table("The meters", (Column("What"), *(Column(each, is_name=True) for each in ids)), _rows(sheet)),
        Heading("In this order"),
        Bullets(_steps(sheet)),
    )


def _rows(sheet: PreTest) -> tuple[tuple[str, ...], ...]:
    others = tuple(BLANK for _ in sheet.beside)
    crank = tuple(BLANK if kind in ("pedals", "crank") else "none" for kind in sheet.beside)
    none = tuple("none" for _ in sheet.beside)
    left = "none" if sheet.side == "right doubled" else BLANK
    right = "none" if sheet.side == "left doubled" else BLANK
    tolerance = percent_text(sheet.tolerance.value) if isinstance(sheet.tolerance, Known) else BLANK
    return (
        ("Unit", BLANK, *others),
        ("Ridden before, km", BLANK, *others),
        ("Firmware", BLANK, *others),
        ("Battery", BLANK, *others),
        ("Zero offset made", BLANK, *others),
        ("Zero offset, left", left, *none),
        ("Zero offset, right", right, *none),
        ("Crank length set, mm", BLANK, *crank),
        ("Fitted with, N m", BLANK, *crank),
        ("Maker's tolerance, ±", tolerance, *others),
        ("Recorder", BLANK, *others),
    )


def _steps(sheet: PreTest) -> tuple[str, ...]:
    torque = sheet.torque
    said = (
        f"Fit with {figure_text(torque.value, 'N m')} ({torque.source})."
        if isinstance(torque, Known)
        else "Fit with the maker's torque, which the catalog does not know: ask the maker."
    )
    steps = [f"{said} The left pedal has a left-hand thread."]
    if sheet.after_fitting not in ("unknown", "none", "not applicable"):
        steps.append(f"The maker asks for {sheet.after_fitting}.")
    if sheet.firmware:
        steps.append(f"The newest firmware in the catalog is {sheet.firmware}; note the one that is on it.")
    return (
        *steps,
        "Let the bike stand outside until it has the temperature of the ride, then make the zero offsets.",
        "With looseness or play anywhere there is no ride: see a mechanic.",
        "Set the clocks of all recorders, and let each write one row a second.",
        "Start all recorders, then ride off. Steady steps of some minutes, some sprints, some coasting.",
    )
