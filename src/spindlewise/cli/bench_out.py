"""What a bench command hands over for the catalog: YAML to paste, or a new file; nothing is rewritten."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from spindlewise.catalog.bench_files import FOLDER
from spindlewise.cli.endings import no_answer, wrong_usage
from spindlewise.cli.printing import answer, remark

if TYPE_CHECKING:
    from spindlewise.answer.bench_observation import BenchObservation

Snippet = Annotated[
    bool, typer.Option("--snippet", help="Print the observations as YAML to paste, in place of the report.")
]
Write = Annotated[
    Path | None,
    typer.Option(
        "--write",
        metavar="FOLDER",
        help="Also write the observations into this folder, as one new YAML file a product; the catalog "
        "reads what lies in its bench/observations.",
    ),
]


def write_observations(observations: Sequence["BenchObservation"], folder: Path, what: str) -> None:
    """One new file a product, named PRODUCT-WHAT-DATE.yaml, DATE being the newest observation's.

    All files are written or none. The folders of a catalog whose every file is read are refused, before
    anything is written; so are observations for a catalog in which their recordings do not lie, and a file
    that stands there already (CannotWrite).
    """
    from spindlewise.catalog.durable import CannotWrite, create_files
    from spindlewise.render.yaml_snippet import record_yaml

    if folder.name in ("products", "buyers") and (folder.parent / "catalog.yaml").is_file():
        wrong_usage(
            f"every file in {folder} is read as one of the {folder.name}; choose another folder, "
            "such as bench/observations, which is read beside them"
        )
    _held(observations, folder)
    files = {}
    for product in dict.fromkeys(each.product for each in observations):
        own = [each for each in observations if each.product == product]
        newest = max(each.date for each in own).isoformat()
        files[folder / f"{product}-{what}-{newest}.yaml"] = record_yaml(product, own).encode()
    missing = [path for path in (folder, *folder.parents) if not path.exists()]
    try:
        make_folder(folder)
        create_files(files)
    except CannotWrite:
        for path in missing:  # the innermost first; one that somebody else has used by now stays
            with suppress(OSError):
                path.rmdir()
        raise
    for path in files:
        remark(f"{path} written.")


def _held(observations: Sequence["BenchObservation"], folder: Path) -> None:
    """Refuse to write into a catalog what rests on recordings that are not in it."""
    whole = folder.resolve()
    catalog = whole.parents[1] if len(whole.parents) > 1 else whole
    if whole.relative_to(catalog).as_posix() != FOLDER or not (catalog / "catalog.yaml").is_file():
        return
    for name, _ in (recording for each in observations for recording in each.recordings):
        if not (catalog / name).is_file():
            wrong_usage(
                f"{name} does not lie in the catalog; put the ride into its bench/rides and compare it "
                "there, so that what is written can be held to its recordings"
            )


def make_folder(folder: Path) -> None:
    """Make a folder and those above it, unless they are there. Raises CannotWrite."""
    from spindlewise.catalog.durable import CannotWrite, reason

    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder}: {reason(error)}") from error


def hand_over(
    observations: Sequence["BenchObservation"], snippet: bool, folder: Path | None, what: str, needed: str
) -> None:
    """Print and write what was asked for; without any observation the question has no answer, and why."""
    if not observations:
        no_answer("there is no observation to hand over", needed)
    if snippet:
        print_snippet(observations)
    if folder is not None:
        write_observations(observations, folder, what)


def print_snippet(observations: Sequence["BenchObservation"]) -> None:
    """The observations as YAML, to stdout."""
    from spindlewise.render.yaml_snippet import snippet_yaml

    answer(snippet_yaml(observations))
