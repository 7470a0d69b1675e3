"""Writes invented catalogs of any size: products of about 60 lines each, and a price log of any length.

The same size gives the same bytes. Settings, curves, rates and taxes are the demo's; buyers are taken along.
"""

import random
import re
import shutil
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

DEMO = Path(__file__).resolve().parents[2] / "catalog"
KEPT = ("catalog.yaml", "criteria.yaml", "rates.csv", "taxes.csv", "buyers")
MAKERS = ("Ostrelle", "Vandrick", "Quillane", "Merrowby", "Tessaric", "Holmveld", "Arkenholt", "Brindlow")
FIRST, LAST = date(2025, 3, 1), date(2026, 11, 10)
HEADER = "date,product,region,currency,amount,tax,kind,seller,valid_until,source"
BASIS = '{count: pair, batteries: in, cleats: "off"}'


def product_id(number: int) -> str:
    """The id of the product with this number."""
    return f"{MAKERS[number % len(MAKERS)].lower()}-{number:06}"


def product_text(number: int) -> str:
    """One power pedal, about 60 lines; every third has a claim that no scales confirm."""
    dice = random.Random(number)
    maker = MAKERS[number % len(MAKERS)]
    day = FIRST + timedelta(days=dice.randrange(300))
    weight = dice.randrange(290, 430)
    source = f"{maker}, sheet {number}"
    sides = dice.choice(("both", "both", "left"))
    power = "both sides" if sides == "both" else "one side doubled"
    balance = "carried" if sides == "both" else "absent"
    claim = f"{{grade: claimed, date: {day}, source: '{source}', value: %s, plus_minus: unknown%s}}"
    weighed_on = day + timedelta(days=90)
    bench = f"{{grade: measured, date: {weighed_on}, source: 'bench log', value: %s, plus_minus: %s%s}}"
    weighed = (
        "" if number % 3 == 0 else f"\n    - {bench % (weight + dice.randrange(8), 1, f', basis: {BASIS}')}"
    )
    said = f"source: '{source}'"
    links = "\n".join(
        f"  - protocol: {protocol}\n    carries:\n"
        + "\n".join(
            f"      - {{what: {what}, how: {how}, since: {day}, firmware: not applicable, {said}}}"
            for what, how in (("power", power), ("balance", balance), ("stroke metrics", "absent"))
        )
        for protocol in ("ANT+", "Bluetooth")
    )
    return f"""schema: spindlewise product 1
id: {product_id(number)}
name: Pedal {number}
maker: {maker}
family: none
kind: power pedal
sides: {sides}
summary: An invented pedal, number {number}, for measuring how long a large catalog takes.
statuses:
  - state: current
    since: {day}
    superseded_by: not applicable
    source: {source}
cleat: {{bolts: three-bolt, pattern: Keel, height_mm: 5.5, plus_minus_mm: 0.3}}
tools:
  fitting: [hex key 8 mm from behind the crank]
  after_fitting: a zero offset after the first ride
battery: {{type: built-in, count: 2, cell_weight_g: not applicable, spare_prices: not applicable}}
service: none
links:
{links}
disclosure: {{unit: bought at retail, source: invoice kept, returned: kept, commission: none}}
observations:
  weight_g:
    - {claim % (weight, f", basis: {BASIS}")}{weighed}
  stack_mm:
    - {bench % (round(dice.uniform(9, 16), 1), 0.3, ", basis: {span: axis to pedal top}")}
  pedal_offset_mm:
    - {bench % (round(dice.uniform(52, 58), 1), 0.4, ", basis: {span: crank face to pedal centre}")}
  rider_limit_kg:
    - {claim % (dice.choice((100, 110, 120)), "")}
  tolerance_pct:
    - {claim % (dice.choice((1, 1.5, 2)), ", basis: {of: total power}")}
  running_hours:
    - {claim % (dice.randrange(30, 120), ", basis: {cells: built-in}")}
  warranty_years:
    - {claim % (dice.choice((1, 2, 3)), "")}
  ingress:
    - {{grade: claimed, date: {day}, source: '{source}', value: IPX7}}
  fitting_torque_nm:
    - {claim % (40, "")}
  reading_bias_pct:
    - {bench % (round(dice.uniform(-1.5, 1.5), 1), 0.2, "")}
  reading_spread_pct:
    - {bench % (round(dice.uniform(0.4, 1.5), 1), 0.2, "")}
  temperature_pct: unknown
reliability: none
safety_notices: none
"""


def price_lines(products: int, lines: int) -> Iterator[str]:
    """So many lines of the log in order of day, each product in turn, two sellers and two regions."""
    dice = random.Random(lines)
    days = (LAST - FIRST).days
    for row in range(lines):
        day = FIRST + timedelta(days=row * days // max(1, lines))
        region, currency, tax = (("EU", "EUR", "in"), ("US", "USD", "out"))[row // products % 2]
        seller = ("Quayside Wheels", "Tollhouse Spokes")[row // products // 2 % 2]
        amount = f"{dice.randrange(25_000, 120_000) / 100:.2f}"
        name = product_id(row % products)
        yield f"{day},{name},{region},{currency},{amount},{tax},street,{seller},,price page {row}"


def write_catalog(folder: Path, products: int, lines: int | None = None) -> Path:
    """The catalog in `folder`, which is made anew; without `lines`, four prices a product."""
    if folder.exists():
        shutil.rmtree(folder)
    (folder / "products").mkdir(parents=True)
    for name in KEPT:
        found = DEMO / name
        (shutil.copytree if found.is_dir() else shutil.copyfile)(found, folder / name)
    for buyer in (folder / "buyers").glob("*.yaml"):
        ridden = re.sub(
            r"(?m)^present_pedals: .*$", f"present_pedals: {product_id(0)}", buyer.read_text("utf-8")
        )
        buyer.write_text(ridden, "utf-8")
    for number in range(products):
        (folder / "products" / f"{product_id(number)}.yaml").write_text(product_text(number), "utf-8")
    with (folder / "prices.csv").open("w", encoding="utf-8") as log:
        log.write(HEADER + "\n")
        for line in price_lines(products, products * 4 if lines is None else lines):
            log.write(line + "\n")
    return folder
