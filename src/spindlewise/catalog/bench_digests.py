"""Whether the recordings behind the bench's observations are still those that were measured from.

The digests stand in the records themselves; only `check` asks, since it means reading every recording.
"""

from functools import cache
from pathlib import Path

from spindlewise.catalog.bench_files import FOLDER, bench_files
from spindlewise.catalog.bench_record import BenchRecord
from spindlewise.catalog.file_digest import digest_of
from spindlewise.catalog.validating import validate
from spindlewise.catalog.yaml_text import read_yaml
from spindlewise.problems import Place, Problem

RULE = "bench-digest"
TIP = "put back the recording that was measured from; of another recording make new observations"


def changed_recordings(folder: Path) -> list[Problem]:
    """Each recording of a record of the bench whose bytes have another SHA-256 than the record says.

    Records that cannot be read, and recordings that are not there, are said where the catalog is opened.
    """
    files = bench_files(folder)
    said: list[Problem] = []

    @cache
    def found(name: str) -> str | None:
        try:
            digest = digest_of(folder / name)
        except OSError as error:
            place = Place((folder / name).as_posix(), 1, 1)
            told = f"cannot be read: {error.strerror or error}"
            said.append(Problem(place, "error", "unreadable-file", told, "let this account read it"))
            return None
        return None if digest is None else digest.sha256

    for name in sorted(file for file in files if file.startswith(f"{FOLDER}/") and file.endswith(".yaml")):
        path = folder / name
        document, _ = read_yaml(path, path.as_posix())
        record = None if document is None else validate(BenchRecord, document)[0]
        if document is None or record is None:
            continue
        for index, raw in enumerate(record.recordings):
            if raw.file not in files or found(raw.file) in (raw.sha256, None):
                continue
            field = f"recordings[{index}].sha256"
            told = f"{field}: {raw.file} is not the file that was measured from"
            place = document.place(("recordings", index, "sha256"))
            said.append(Problem(place, "error", RULE, told, TIP, field))
    return said
