"""Files of a published site as they stand: read, and told from links that could lead anywhere."""

from pathlib import Path

from spindlewise.catalog.durable import CannotWrite, reason


def read_file(path: Path) -> bytes | None:
    """The bytes, None where there is no such file. Raises CannotWrite for one that cannot be read."""
    try:
        return path.read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as error:
        raise CannotWrite(f"{path}: {reason(error)}") from error


def through_link(out: Path, path: str) -> bool:
    """Whether a file of the site, or a folder on the way to it, is a link."""
    parts = Path(path)
    return any((out / part).is_symlink() for part in (parts, *parts.parents) if part.parts)
