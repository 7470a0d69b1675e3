"""Lines of the bench about a price log of a million lines, against pandas reading the file once."""

import time

from speed.large_catalog import product_id, write_catalog
from speed.timing import Line, by_turns, command, python, ratio_line, shown, workshop

PRODUCTS, LINES = 50, 1_000_000


def million_prices() -> list[Line]:
    """One product's history and a ranking as of a day, as whole processes; and appending one price."""
    folder = write_catalog(workshop() / "million", PRODUCTS, LINES)
    log = folder / "prices.csv"
    peer = python(f"import pandas; pandas.read_csv({str(log)!r})")
    reading = min(peer().seconds for _ in range(5))
    lines = []
    for what, words in (
        ("price history", ["price", "history", product_id(7)]),
        ("rank --as-of", ["rank", "--buyer", "club-racer", "--as-of", "2026-06-01"]),
    ):
        for kept, more in ((", nothing kept", {"SPINDLEWISE_KEEP": "no"}), ("", {})):
            ask = command("--catalog", str(folder), *words, **more)
            ask()
            ours = min(ask().seconds for _ in range(3))
            told = f"`{what}` with a log of {LINES:,} lines{kept}, whole process"
            lines.append(ratio_line(told, ours, "pandas reads it once", reading, "1.5"))
    return [*lines, appending()]


def appending() -> Line:
    """Appending one price to a log of a million lines and to one of a thousand, synced and locked."""
    from spindlewise.catalog.price_log import append_price, read_price_log

    few = write_catalog(workshop() / "few-prices", PRODUCTS, 1000) / "prices.csv"
    many = workshop() / "million" / "prices.csv"
    row = read_price_log(few, "prices.csv")[0][-1]
    long, short = by_turns(
        lambda: append_price(many, row), lambda: append_price(few, row), 5, 20, clock=time.process_time
    )
    return Line(
        f"appending a price to a log of {LINES:,} lines",
        shown(long),
        f"to one of 1,000 lines {shown(short)}",
        f"{long / short:.2f}",
        "1",
    )
