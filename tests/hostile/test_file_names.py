"""What an author names and what becomes a file: it stays in its folder, and never meets another one."""

from pathlib import PurePosixPath

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

import worlds
from hostile.payloads import HIDDEN, PAYLOADS
from spindlewise.bench.stated import FileName
from spindlewise.buyer.model import BuyerId
from spindlewise.catalog.model import Identifier, Region
from spindlewise.problems import RESERVED_FILE_NAMES
from spindlewise.site import pages
from spindlewise.site.manifest import NAME, stays_inside

ID = TypeAdapter(Identifier)
DEVICES = {"con", "prn", "aux", "nul", "com1", "lpt9"}
PATHS = (
    "..", "../x", "a/b", "a\\b", "/etc/passwd", "c:", "c:\\x", ".", ".hidden", "a.", "a ", "a%2fb", "a\0b",
    "~x", "a:stream", "a?b", "a*b", "ａ", "ß", "İ", "ı", "COM1", "Con", "con.txt", "a" * 61,
)  # fmt: skip
ODD = [text for text in PAYLOADS if text != "constructor"]
"""That one is a word like any other here: names are looked up in lists, never as a key."""


@pytest.mark.parametrize("name", [*PATHS, *ODD, *HIDDEN, *sorted(RESERVED_FILE_NAMES)])
def test_no_product_and_no_buyer_is_called_so(name: str) -> None:
    for kind in (ID, TypeAdapter(BuyerId)):
        with pytest.raises(ValidationError):
            kind.validate_python(name)


@pytest.mark.parametrize("name", ["../x.csv", "a/b.csv", "a\\b.csv", "/etc/passwd", ".hidden", *HIDDEN])
def test_no_recording_lies_elsewhere(name: str) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(FileName).validate_python(name)


def test_devices_of_any_system_are_reserved_whatever_their_case() -> None:
    assert DEVICES <= RESERVED_FILE_NAMES
    for name in sorted(DEVICES):
        with pytest.raises(ValidationError):
            ID.validate_python(name)
    for region in ("CON", "PRN", "AUX", "NUL", "INDEX"):
        with pytest.raises(ValidationError):
            TypeAdapter(Region).validate_python(region)


def test_the_folders_own_page_is_nobodys() -> None:
    """buyers/index.html lists the buyers; one who is called so would take its place."""
    for kind in (ID, TypeAdapter(BuyerId)):
        with pytest.raises(ValidationError, match="reserved file name"):
            kind.validate_python("index")


NAMES = st.from_regex(r"[a-z0-9]{1,4}(-[a-z0-9]{1,3}){0,2}", fullmatch=True).filter(
    lambda name: len(name) > 1 and name not in RESERVED_FILE_NAMES
)


@settings(deadline=None, max_examples=30)
@given(
    st.lists(NAMES | st.sampled_from(["ranking", "data", "eu", "us"]), min_size=1, max_size=4, unique=True),
    st.lists(NAMES | st.sampled_from(["ranking", "comparison-eu"]), min_size=1, max_size=3, unique=True),
)
def test_no_two_files_of_a_site_meet_and_none_leaves_it(products: list[str], buyers: list[str]) -> None:
    """On a file system that tells no capitals from small letters, and drops dots and spaces at the end."""
    jobs: list[str] = []

    def counted(all_, total):
        for job in all_:
            jobs.append(job.path)
            yield job

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(pages, "draw_all", lambda all_, *_: dict.fromkeys((p.key for p in all_), "<svg></svg>"))
        prices = [worlds.price(name, 500) for name in products]
        catalog = worlds.catalog([worlds.product(name) for name in products], prices)
        made = pages.gather(catalog, {n: worlds.buyer(id=n) for n in buyers}, worlds.DAY, counted)
    assert len(jobs) == len(made)  # nothing took another's place
    assert len({path.casefold().rstrip(". ") for path in [*made, NAME]}) == len(made) + 1
    for path in made:
        assert stays_inside(path)
        assert all(part.split(".")[0].casefold() not in DEVICES for part in PurePosixPath(path).parts)
