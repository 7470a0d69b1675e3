"""`spindlewise bench`: from what was measured to what the catalog may say of it."""

import typer

from spindlewise.cli import bench_history, bench_hours, bench_ride, bench_sheet, bench_weigh


def add_to(app: typer.Typer) -> None:
    """Add the group of commands."""
    group = typer.Typer(
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        help="Measurements in, verdicts and observations out.",
    )
    for module in (bench_weigh, bench_hours, bench_ride, bench_sheet, bench_history):
        module.add_to(group)
    app.add_typer(group, name="bench")
