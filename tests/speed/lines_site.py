"""Lines of the bench about publishing: a large site against its charts, and again after one price drop."""

import json
import sys
import time
from pathlib import Path

from speed.large_catalog import price_lines, write_catalog
from speed.timing import Line, command, python, shown, spent, workshop

PRODUCTS = 500
SPECIFY = """
import json, sys
from pathlib import Path
from spindlewise.answer.asking import open_buyers
from spindlewise.catalog.opening import open_catalog
from spindlewise.site import pages
from spindlewise.site.chart_prices import price_chart, price_drawing
from spindlewise.site.build import publish
kept = []
def grammar(picture):
    specify = price_chart if picture.specify is price_drawing else picture.specify
    return specify(picture.shown)
def specified(pictures, before, progress):
    found = {picture.key: picture for picture in pictures}
    kept.extend(grammar(picture) for picture in found.values())
    return dict.fromkeys(found, "")
pages.draw_all = specified
folder, out, specs = map(Path, sys.argv[1:])
catalog, _ = open_catalog(folder)
buyers, _ = open_buyers(folder / "buyers", catalog)
publish(catalog, buyers, catalog.settings.as_of, out)
specs.write_text(json.dumps(kept, default=str))
"""
DRAW = """
import json, sys
from multiprocessing import Pool
import vl_convert
specs = json.load(open(sys.argv[1]))
if __name__ == "__main__":
    with Pool(2) as pool:
        pool.map(vl_convert.vegalite_to_svg, specs, chunksize=8)
"""


def publishing() -> list[Line]:
    """The first site of 500 products, and the second after one price has dropped."""
    folder = write_catalog(workshop() / "five-hundred", PRODUCTS)
    site, specs = workshop() / "site-500", workshop() / "specs.json"
    script = workshop() / "draw.py"
    script.write_text(DRAW, "utf-8")
    told = [str(folder), str(workshop() / "undrawn"), str(specs)]
    python(f"import sys; sys.argv[1:] = {told!r}\n{SPECIFY}")()
    charts = len(json.loads(specs.read_text("utf-8")))
    alone = spent(sys.executable, str(script), str(specs))
    publish = command("--catalog", str(folder), "publish", "--out", str(site))
    first = publish()
    before = written(site)
    last = list(price_lines(PRODUCTS, PRODUCTS * 4))[-1].split(",")
    last[4], last[-1] = f"{float(last[4]) - 5:.2f}", "a drop"
    with (folder / "prices.csv").open("a", encoding="utf-8") as log:
        log.write(",".join(last) + "\n")
    begun = time.perf_counter()
    second = publish()
    wall = time.perf_counter() - begun
    after = written(site)
    changed = sum(before.get(name) != stamp for name, stamp in after.items())
    return [
        Line(
            f"first `publish` of {PRODUCTS} products, {len(after):,} files",
            shown(first.seconds),
            f"the chart library drawing its {charts:,} charts {shown(alone.seconds)}",
            f"{first.seconds / alone.seconds:.2f}",
            "1.5",
        ),
        Line(
            f"`publish` again after a price drop of {last[1]}",
            f"{shown(second.seconds)} ({shown(wall)} by the clock)",
            f"the first {shown(first.seconds)}",
            f"{changed} of {len(after):,} files written",
            "under 3 s, only what changed",
        ),
    ]


def written(site: Path) -> dict[str, tuple[int, int]]:
    """Every file of the site with what tells whether it was written since: its bytes' own time and inode."""
    found = {}
    for path in site.rglob("*"):
        if path.is_file():
            stat = path.stat()
            found[path.relative_to(site).as_posix()] = (stat.st_mtime_ns, stat.st_ino)
    return found
