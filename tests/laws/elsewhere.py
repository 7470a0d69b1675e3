"""The same questions under other circumstances: a program of its own, whose answers are compared as bytes.

python tests/laws/elsewhere.py CATALOG CIRCUMSTANCES: prints the SHA-256 of all that it was told, by question.
The hash seed, locale and time zone come from outside, in the program's environment; the rest is changed here.
"""

import hashlib
import json
import locale
import os
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

LOCALES = ("C", "de_DE.UTF-8", "tr_TR.UTF-8")
"""One without a language, one with a comma in its decimals, one whose small I has no dot."""
ZONES = ("UTC", "Pacific/Kiritimati", "America/St_Johns")
"""The middle, the first of all days, and one that is half an hour off."""
SEEDS = range(21)
SIGNS = "what the program saw of its circumstances"
I18N = Path("/usr/share/i18n/locales")


@dataclass(frozen=True)
class Circumstances:
    """What may differ between two runs; none of it may show."""

    hash_seed: int
    locale: str = "C"
    zone: str = "UTC"
    file_order: int = 0
    """Seed of the order in which folders list their files; 0 leaves it as the system has it."""
    threads: int = 1
    days_later: int = 0
    site: bool = True


def usual_circumstances(seed: int, site: bool = True) -> Circumstances:
    """Everything differs from one seed to the next, each of it with its own beat."""
    return Circumstances(
        hash_seed=seed,
        locale=LOCALES[seed % 3],
        zone=ZONES[seed // 3 % 3],
        file_order=seed,
        threads=1 + seed % 2,
        days_later=97 * (seed % 5),
        site=site,
    )


def compiled_locales(to: Path) -> bool:
    """Make the locales, as Debian's `locale-gen` would; whether the system can."""
    for name in LOCALES[1:]:
        language = name.partition(".")[0]
        if not (I18N / language).exists():
            return False
        done = subprocess.run(
            ["localedef", "-i", language, "-f", "UTF-8", str(to / name)], capture_output=True, check=False
        )
        if done.returncode:
            return False
    return True


def told_elsewhere(catalog: Path, under: Circumstances, locales: Path | None) -> dict[str, str]:
    """Run this file under the circumstances; under SIGNS stands what of them the program itself can see.

    Without `locales` the locale's name is set, but its rules are not.
    """
    threads = str(under.threads)
    environment = {
        **os.environ,
        "PYTHONHASHSEED": str(under.hash_seed),
        "LC_ALL": under.locale,
        "LANG": under.locale,
        "TZ": under.zone,
        "PYTHONPATH": os.pathsep.join(sys.path),
        **dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), threads),
    }
    if locales is not None:
        environment["LOCPATH"] = str(locales)
    done = subprocess.run(
        [sys.executable, "-B", str(Path(__file__).resolve()), catalog.name, json.dumps(asdict(under))],
        cwd=catalog.parent,
        capture_output=True,
        text=True,
        encoding="utf-8",
        env=environment,
        check=False,
    )
    assert done.returncode == 0, f"{under}\n{done.stdout[-2000:]}\n{done.stderr[-2000:]}"
    found = json.loads(done.stdout)
    assert isinstance(found, dict)
    return found


def _told(catalog: Path, under: Circumstances) -> Mapping[str, str]:
    try:
        where = locale.setlocale(locale.LC_ALL, "")
    except locale.Error:
        where = "none"
    time.tzset()
    from typer.testing import CliRunner

    from spindlewise.cli import opening
    from spindlewise.cli.main import app
    from spindlewise.decide import stability

    later = timedelta(days=under.days_later)
    opening.datetime = _clock(later)  # type: ignore[attr-defined]
    stability.stability.__kwdefaults__["threads"] = under.threads
    found = {}
    with _listed_otherwise(under.file_order), tempfile.TemporaryDirectory() as scratch:
        out = Path(scratch) / "site"
        for words in _questions(catalog, out, under.site):
            done = CliRunner().invoke(app, [*words, "--catalog", str(catalog)], env={"COLUMNS": "100"})
            if done.exit_code not in (0, 4):
                raise SystemExit(f"{words}: {done.exit_code}\n{done.output}")
            if words[0] != "publish":
                found[" ".join(words)] = hashlib.sha256(done.stdout.encode()).hexdigest()
        found[SIGNS] = repr(
            (
                hash("pedal"),
                where,
                locale.localeconv()["decimal_point"],
                (time.localtime(0).tm_hour, time.localtime(0).tm_min),
                [path.name for path in (catalog / "products").iterdir()],
                os.environ["OMP_NUM_THREADS"],
                opening.today().toordinal() - datetime.now().astimezone().date().toordinal(),
            )
        )
        for path in sorted(out.rglob("*")):
            if path.is_file():
                found[path.relative_to(out).as_posix()] = hashlib.sha256(path.read_bytes()).hexdigest()
    return found


def _questions(catalog: Path, out: Path, site: bool) -> list[list[str]]:
    buyers = sorted(path.stem for path in (catalog / "buyers").glob("*.yaml"))
    products = sorted(path.stem for path in (catalog / "products").glob("*.yaml"))
    asked: list[list[str]] = [["check", "--format", "plain"]]
    for buyer in buyers:
        asked += [["rank", "--buyer", buyer, "--json"], ["answer", "--buyer", buyer, "--json"]]
        asked += [["answer", "--buyer", buyer, "--format", form] for form in ("text", "markdown")]
    asked += [
        ["versus", products[0], products[-1], "--buyer", buyers[0], "--json"],
        ["ladder", "--buyer", buyers[0], "--json"],
        ["price", "history", products[0], "--json"],
        ["rank", "--order", "weight,price", "--as-of", "2026-11-01", "--json"],
    ]
    return [*asked, ["publish", "--out", str(out)]] if site else asked


def _clock(later: timedelta) -> type[datetime]:
    class Later(datetime):
        @classmethod
        def now(cls, tz: Any = None) -> datetime:  # type: ignore[override]
            return datetime.now(tz) + later

    return Later


@contextmanager
def _listed_otherwise(seed: int) -> Iterator[None]:
    """Folders list their files in another order, as another file system would."""
    draw, real_scan, real_list = random.Random(seed), os.scandir, os.listdir

    @contextmanager
    def scan(*about: Any) -> Iterator[Any]:
        with real_scan(*about) as entries:
            yield iter(shuffled(list(entries)))

    def shuffled(names: list[Any]) -> list[Any]:
        draw.shuffle(names)
        return names

    if not seed:
        yield
        return
    os.scandir, os.listdir = scan, lambda *about: shuffled(real_list(*about))  # type: ignore[assignment]
    try:
        yield
    finally:
        os.scandir, os.listdir = real_scan, real_list


if __name__ == "__main__":
    print(json.dumps(_told(Path(sys.argv[1]), Circumstances(**json.loads(sys.argv[2])))))
